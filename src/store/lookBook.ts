import type { CueLook } from '../core/census/cueLook.ts'

/**
 * What cues look like, by what their colours depend on (`censusKeyOf`). A key has one look for ever,
 * so that a book with one more is a new book over the same entries: nothing is copied.
 */
export type LookBook = {
  readonly entries: ReadonlyMap<string, CueLook>
  /** How many were entered. */
  readonly version: number
  /** Cues nearer than this (0…1, see `lookDistance`) count as alike. */
  readonly limit: number
}

/**
 * Parts of one shot of the sample reel are 0.15 apart at most, shots of different subjects 0.19 and
 * more, mostly over 0.5.
 */
export const USUAL_LIMIT = 0.18

export const NO_LOOKS: LookBook = { entries: new Map(), version: 0, limit: USUAL_LIMIT }

/** Looks kept, those of framings that are no more included; the oldest go first. */
const MOST_LOOKS = 24_000

/** A book with one look more. */
export const withLook = (
  { entries, version, limit }: LookBook,
  key: string,
  look: CueLook,
): LookBook => {
  const kept = version === 0 ? new Map<string, CueLook>() : (entries as Map<string, CueLook>)
  kept.set(key, look)
  if (kept.size > MOST_LOOKS) {
    const [oldest] = kept.keys()
    if (oldest !== undefined) kept.delete(oldest)
  }
  return { entries: kept, version: version + 1, limit }
}
