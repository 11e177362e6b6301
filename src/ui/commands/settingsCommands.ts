import type { Command } from './command.ts'

export const SETTINGS_COMMANDS: readonly Command[] = []
