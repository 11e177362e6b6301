import type { Preferences } from '../../store/preferences.ts'
import { keysOf, layoutKeysOf } from './keys.ts'

/** Keys in use: a layout and what differs from it. */
export type Keymap = Pick<Preferences, 'hand' | 'keys'>

const isSame = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((key) => b.includes(key))

/** Own keys without those entries that say what the layout says anyway. */
const withoutIdle = (map: Keymap): Preferences['keys'] =>
  Object.fromEntries(
    Object.entries(map.keys).filter(([id, keys]) => !isSame(keys, layoutKeysOf(id, map))),
  )

/** Takes keys away from whichever commands were given them by hand, but not from `id`. */
const takeFromOthers = (map: Keymap, id: string, keys: readonly string[]): Preferences['keys'] =>
  Object.fromEntries(
    Object.entries(map.keys).map(([other, own]) => [
      other,
      other === id ? own : own.filter((key) => !keys.includes(key)),
    ]),
  )

/** Gives a command one more key; a command that had it goes without. */
export const giveKey = (map: Keymap, id: string, key: string): Preferences['keys'] => {
  const mine = keysOf(id, map)
  if (mine.includes(key)) return map.keys
  const keys = { ...takeFromOthers(map, id, [key]), [id]: [...mine, key] }
  return withoutIdle({ ...map, keys })
}

/** Takes a key away from a command. */
export const takeKey = (map: Keymap, id: string, key: string): Preferences['keys'] =>
  withoutIdle({
    ...map,
    keys: { ...map.keys, [id]: keysOf(id, map).filter((each) => each !== key) },
  })

/** Gives a command the layout's keys back, from wherever they have gone. */
export const resetKeys = (map: Keymap, id: string): Preferences['keys'] => {
  const others = takeFromOthers(map, id, layoutKeysOf(id, map))
  return withoutIdle({
    ...map,
    keys: Object.fromEntries(Object.entries(others).filter(([other]) => other !== id)),
  })
}

/** Whether a command's keys are others than the layout's. */
export const hasOwnKeys = (map: Keymap, id: string): boolean =>
  !isSame(keysOf(id, map), layoutKeysOf(id, map))

const ALWAYS = ['Escape', 'Enter', 'Tab', 'Shift+Tab', 'Shift+Enter']

/** What browsers do not let a page have: closing, opening and changing windows and tabs. */
const BROWSERS = /^Mod\+(?:Alt\+)?(?:Shift\+)?(?:[WTNQ]|Tab|Page(?:Up|Down))$|^Alt\+F4$|^F1[12]$/u

const MODIFIERS = ['Control', 'Shift', 'Alt', 'AltGraph', 'Meta', 'CapsLock', 'Dead', 'Process']

/** Whether a press names no key yet, only what is held with one. */
export const isModifier = (key: string): boolean => MODIFIERS.includes(key)

/** Why a key cannot be given to a command; undefined where it can. */
export const refusalOfKey = (key: string): string | undefined => {
  if (ALWAYS.includes(key)) return 'closes, confirms or goes on to the next control everywhere'
  return BROWSERS.test(key) ? 'is the browser’s own' : undefined
}
