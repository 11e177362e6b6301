import type { Command } from './command.ts'

export const CARRY_COMMANDS: readonly Command[] = []
