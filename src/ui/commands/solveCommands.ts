import type { Command } from './command.ts'

export const SOLVE_COMMANDS: readonly Command[] = []
