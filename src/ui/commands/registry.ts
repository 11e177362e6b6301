import { AGREE_COMMANDS } from './agreeCommands.ts'
import { BOUNDARY_COMMANDS } from './boundaryCommands.ts'
import { CARRY_COMMANDS } from './carryCommands.ts'
import type { Command } from './command.ts'
import { COMPARE_COMMANDS } from './compareCommands.ts'
import { CUE_COMMANDS } from './cueCommands.ts'
import { FRAMING_COMMANDS } from './framingCommands.ts'
import { GRADE_COMMANDS } from './gradeCommands.ts'
import { INSTRUMENT_COMMANDS } from './instrumentCommands.ts'
import { JOB_COMMANDS } from './jobCommands.ts'
import { LEDGER_COMMANDS } from './ledgerCommands.ts'
import { PICTURE_COMMANDS } from './pictureCommands.ts'
import { PLAY_COMMANDS } from './playCommands.ts'
import { SETTINGS_COMMANDS } from './settingsCommands.ts'
import { SOLVE_COMMANDS } from './solveCommands.ts'
import { TRANSFER_COMMANDS } from './transferCommands.ts'

/** Everything a person can do by name or key. */
export const COMMANDS: readonly Command[] = [
  ...JOB_COMMANDS,
  ...PLAY_COMMANDS,
  ...CUE_COMMANDS,
  ...BOUNDARY_COMMANDS,
  ...PICTURE_COMMANDS,
  ...COMPARE_COMMANDS,
  ...INSTRUMENT_COMMANDS,
  ...FRAMING_COMMANDS,
  ...SOLVE_COMMANDS,
  ...GRADE_COMMANDS,
  ...CARRY_COMMANDS,
  ...LEDGER_COMMANDS,
  ...AGREE_COMMANDS,
  ...TRANSFER_COMMANDS,
  ...SETTINGS_COMMANDS,
]

const byId = new Map(COMMANDS.map((command) => [command.id, command]))

export const commandById = (id: string): Command => {
  const command = byId.get(id)
  if (!command) throw new Error(`Bug: there is no command “${id}”`)
  return command
}
