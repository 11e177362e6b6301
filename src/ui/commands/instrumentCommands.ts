import type { Command } from './command.ts'

export const INSTRUMENT_COMMANDS: readonly Command[] = []
