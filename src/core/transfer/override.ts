/** What is looked at before a transfer. */
export type ChecklistName =
  | 'looked'
  | 'agreed'
  | 'tolerance'
  | 'boundaries'
  | 'scan'
  | 'space'
  | 'line-up'

export const CHECKLIST_NAMES: readonly ChecklistName[] = [
  'looked',
  'agreed',
  'tolerance',
  'boundaries',
  'scan',
  'space',
  'line-up',
]

/** What is looked at, as it is called. */
export const CHECKLIST_TITLES: Readonly<Record<ChecklistName, string>> = {
  looked: 'Looked at',
  agreed: 'Agreement',
  tolerance: 'Tolerance',
  boundaries: 'Boundaries',
  scan: 'Scan',
  space: 'Room',
  'line-up': 'Line-up',
}

/** A person's written reason to make a transfer although something was not as it should be. */
export type Override = {
  readonly check: ChecklistName
  /** What was found when the reason was given, in words. */
  readonly found: string
  /**
   * What was found, one mark each: such as the cues that are outside. The reason holds where
   * nothing is found that is not among these.
   */
  readonly about: readonly string[]
  readonly reason: string
  /** When, UTC by ISO 8601. */
  readonly at: string
}
