import type { Preferences } from '../../store/preferences.ts'
import type { Command } from './command.ts'
import { LEFT_HAND_KEYS } from './keyLayouts.ts'

type KeyPress = {
  readonly key: string
  readonly code: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly shiftKey: boolean
  readonly altKey: boolean
}

/** A key press by the name commands use: 'Mod+Shift+Z', 'Space', '['. */
export const keyName = (press: KeyPress): string => {
  const isLetter = /^Key[A-Z]$/u.test(press.code)
  const key = press.key === ' ' ? 'Space' : isLetter ? press.code.slice(3) : press.key
  const isNamed = isLetter || key.length > 1
  return [
    press.ctrlKey || press.metaKey ? 'Mod+' : '',
    press.altKey ? 'Alt+' : '',
    press.shiftKey && isNamed ? 'Shift+' : '',
    key,
  ].join('')
}

/** The keys of a command: the person's own where given, otherwise the layout's. */
export const keysOf = (id: string, { keys }: Preferences): readonly string[] =>
  keys[id] ?? LEFT_HAND_KEYS[id] ?? []

/** The command a key runs, among those given. */
export const commandForKey = (
  commands: readonly Command[],
  press: KeyPress,
  preferences: Preferences,
): Command | undefined => {
  const name = keyName(press)
  return commands.find(({ id }) => keysOf(id, preferences).includes(name))
}

/** How a key is written on the screen. */
export const keyLabel = (key: string, isMac: boolean): string =>
  key
    .replace('Mod+', isMac ? '⌘' : 'Ctrl ')
    .replace('Shift+', isMac ? '⇧' : 'Shift ')
    .replace('Alt+', isMac ? '⌥' : 'Alt ')
    .replace('ArrowLeft', '←')
    .replace('ArrowRight', '→')
    .replace('PageUp', 'Page Up')
    .replace('PageDown', 'Page Down')

/** Pairs of commands that ask for the same key: there must be none. */
export const keyConflicts = (
  commands: readonly Command[],
  preferences: Preferences,
): readonly string[] => {
  const owners = new Map<string, string>()
  const conflicts: string[] = []
  for (const { id } of commands)
    for (const key of keysOf(id, preferences)) {
      const owner = owners.get(key)
      if (owner !== undefined) conflicts.push(`${key}: ${owner} and ${id}`)
      else owners.set(key, id)
    }
  return conflicts
}
