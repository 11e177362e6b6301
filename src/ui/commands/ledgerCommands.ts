import type { Command } from './command.ts'

export const LEDGER_COMMANDS: readonly Command[] = []
