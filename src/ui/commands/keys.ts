import type { Preferences } from '../../store/preferences.ts'
import type { Command } from './command.ts'
import { KEY_LAYOUTS } from './keyLayouts.ts'

export type KeyPress = {
  readonly key: string
  readonly code: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly shiftKey: boolean
  readonly altKey: boolean
}

/**
 * The key itself: letters and digits by where they lie, as they are chosen for the hand; with
 * Ctrl or ⌘ letters go by what is written on them, as they are chosen for the word.
 */
const plainKey = ({ key, code, ctrlKey, metaKey }: KeyPress): string => {
  if (key === ' ') return 'Space'
  const place = /^(?:Key|Digit)([A-Z0-9])$/u.exec(code)?.[1]
  if (place === undefined) return key
  return (ctrlKey || metaKey) && /^[a-z]$/iu.test(key) ? key.toUpperCase() : place
}

/** A key press by the name commands use: 'Mod+Shift+Z', 'Space', '['. */
export const keyName = (press: KeyPress): string => {
  const key = plainKey(press)
  const isNamed = key.length > 1 || /^[A-Z0-9]$/u.test(key)
  return [
    press.ctrlKey || press.metaKey ? 'Mod+' : '',
    press.altKey ? 'Alt+' : '',
    press.shiftKey && isNamed ? 'Shift+' : '',
    key,
  ].join('')
}

type OwnKeys = Preferences['keys']

const takenBy = new WeakMap<OwnKeys, ReadonlySet<string>>()

/** Keys a person has given to commands: the layout's own commands do without them. */
const takenKeys = (own: OwnKeys): ReadonlySet<string> => {
  const known = takenBy.get(own)
  if (known) return known
  const taken = new Set(Object.values(own).flat())
  takenBy.set(own, taken)
  return taken
}

/** The keys the layout has for a command, whatever a person has changed. */
export const layoutKeysOf = (id: string, { hand }: Pick<Preferences, 'hand'>): readonly string[] =>
  KEY_LAYOUTS[hand][id] ?? []

/**
 * The keys of a command: the person's own where given, otherwise the layout's as far as no other
 * command was given them.
 */
export const keysOf = (
  id: string,
  preferences: Pick<Preferences, 'hand' | 'keys'>,
): readonly string[] => {
  const own = preferences.keys[id]
  if (own) return own
  const taken = takenKeys(preferences.keys)
  const keys = layoutKeysOf(id, preferences)
  return keys.some((key) => taken.has(key)) ? keys.filter((key) => !taken.has(key)) : keys
}

/** The command that has a key, among those given. */
export const commandWithKey = (
  commands: readonly Command[],
  key: string,
  preferences: Pick<Preferences, 'hand' | 'keys'>,
): Command | undefined => commands.find(({ id }) => keysOf(id, preferences).includes(key))

const LABELS: readonly (readonly [string, string])[] = [
  ['ArrowLeft', '←'],
  ['ArrowRight', '→'],
  ['ArrowUp', '↑'],
  ['ArrowDown', '↓'],
  ['PageUp', 'Page Up'],
  ['PageDown', 'Page Down'],
]

/** How a key is written on the screen. */
export const keyLabel = (key: string, isMac: boolean): string =>
  LABELS.reduce(
    (text, [name, label]) => text.replace(name, label),
    key
      .replace('Mod+', isMac ? '⌘' : 'Ctrl ')
      .replace('Shift+', isMac ? '⇧' : 'Shift ')
      .replace('Alt+', isMac ? '⌥' : 'Alt '),
  )

/** Pairs of commands that ask for the same key: there must be none. */
export const keyConflicts = (
  commands: readonly Command[],
  preferences: Pick<Preferences, 'hand' | 'keys'>,
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
