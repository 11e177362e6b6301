import { BOUNDARY_COMMANDS } from './boundaryCommands.ts'
import type { Command } from './command.ts'
import { CUE_COMMANDS } from './cueCommands.ts'
import { JOB_COMMANDS } from './jobCommands.ts'
import { PICTURE_COMMANDS } from './pictureCommands.ts'
import { PLAY_COMMANDS } from './playCommands.ts'

/** Everything a person can do by name or key. */
export const COMMANDS: readonly Command[] = [
  ...JOB_COMMANDS,
  ...PLAY_COMMANDS,
  ...CUE_COMMANDS,
  ...BOUNDARY_COMMANDS,
  ...PICTURE_COMMANDS,
]

const byId = new Map(COMMANDS.map((command) => [command.id, command]))

export const commandById = (id: string): Command => {
  const command = byId.get(id)
  if (!command) throw new Error(`Bug: there is no command “${id}”`)
  return command
}
