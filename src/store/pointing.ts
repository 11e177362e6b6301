/** A place on the scan: 0…1 across and down. */
export type ScanPoint = { readonly x: number; readonly y: number }

/** What a press on the picture is for. */
export type PointingMode = 'read' | 'neutral' | 'dye'

export type Pointing = {
  readonly mode: PointingMode
  /** Where the pointer is over the picture, on the scan. */
  readonly over: ScanPoint | undefined
  /** The place that is read until another is chosen; also moved by key. */
  readonly reading: ScanPoint | undefined
  /** Places picked for what is asked: one to three for 'neutral', one to five for 'dye'. */
  readonly picks: readonly ScanPoint[]
}

export const INITIAL_POINTING: Pointing = {
  mode: 'read',
  over: undefined,
  reading: undefined,
  picks: [],
}
