/** Which hand works the keys; the other holds the pointer or the stick. */
export type Hand = 'left' | 'right'

/** What a person has set up for this browser; not part of any job. */
export type Preferences = {
  readonly hand: Hand
  /** Keys that differ from the layout's, by command id; an empty list takes a command's keys away. */
  readonly keys: Readonly<Record<string, readonly string[]>>
  /** Hints that were put away. */
  readonly hintsSeen: readonly string[]
}

export const INITIAL_PREFERENCES: Preferences = { hand: 'left', keys: {}, hintsSeen: [] }
