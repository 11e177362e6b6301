import { readSetup } from '../core/surface/readSetup.ts'
import type { AppStore } from '../store/appStore.ts'
import { INITIAL_PREFERENCES, type Preferences, TEXT_SIZES } from '../store/preferences.ts'

const PLACE = 'reelwright.preferences'

/** More than anyone sets up by hand; what is longer was not written by this program. */
const MOST = 1000

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const wordsOf = (value: unknown): readonly string[] | undefined =>
  Array.isArray(value) && value.length <= MOST && value.every((each) => typeof each === 'string')
    ? value
    : undefined

const keysOf = (value: unknown): Preferences['keys'] | undefined => {
  if (!isRecord(value)) return undefined
  const entries = Object.entries(value).slice(0, MOST)
  return Object.fromEntries(
    entries.flatMap(([id, keys]) => {
      const known = wordsOf(keys)
      return known ? [[id, known] as const] : []
    }),
  )
}

const oneOf =
  <Value>(values: readonly Value[]) =>
  (value: unknown): Value | undefined =>
    values.find((each) => each === value)

/** How each preference is read; undefined where what was kept cannot be used. */
const READERS: {
  readonly [Name in keyof Preferences]: (value: unknown) => Preferences[Name] | undefined
} = {
  hand: oneOf(['left', 'right'] as const),
  keys: keysOf,
  hintsSeen: wordsOf,
  showsHints: oneOf([true, false]),
  textSize: oneOf(TEXT_SIZES),
  surface: readSetup,
}

/**
 * Preferences from what the browser kept: each is taken where it can be used and left as it is at
 * first where it cannot, so that a broken or an older text costs no more than it must.
 */
export const readPreferences = (text: string | null): Preferences => {
  let kept: unknown
  try {
    kept = JSON.parse(text ?? '{}')
  } catch {
    return INITIAL_PREFERENCES
  }
  if (!isRecord(kept)) return INITIAL_PREFERENCES
  const read = Object.entries(READERS).flatMap(([name, reader]) => {
    const value = Object.hasOwn(kept, name) ? reader(kept[name]) : undefined
    return value === undefined ? [] : [[name, value] as const]
  })
  return { ...INITIAL_PREFERENCES, ...Object.fromEntries(read) }
}

/**
 * Brings preferences back from the browser's storage and keeps them there as they change. Without
 * storage, or where it refuses, they last as long as the page.
 */
export const keepPreferences = (
  store: AppStore,
  storage: () => Pick<Storage, 'getItem' | 'setItem'>,
): void => {
  try {
    store.setState({ preferences: readPreferences(storage().getItem(PLACE)) })
  } catch {
    return
  }
  store.subscribe(({ preferences }, before) => {
    if (preferences === before.preferences) return
    try {
      storage().setItem(PLACE, JSON.stringify(preferences))
    } catch {
      // A full or a closed storage: what was set up holds for this page.
    }
  })
}
