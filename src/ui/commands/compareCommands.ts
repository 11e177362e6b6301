import type { Command } from './command.ts'

export const COMPARE_COMMANDS: readonly Command[] = []
