import type { Command } from './command.ts'

export const FRAMING_COMMANDS: readonly Command[] = []
