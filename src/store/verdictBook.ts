import type { CueFlashes } from '../core/flashes/cueFlashes.ts'
import type { Frame } from '../core/time/frame.ts'
import type { Verdict } from '../core/tolerance/verdict.ts'

/**
 * The verdicts known, by what they hold for (see `checkKey`). What a key holds for has one verdict
 * for ever, so that a book with one more is a new book over the same entries: nothing is copied,
 * and an older book may know more than it did.
 */
export type VerdictBook = {
  readonly entries: ReadonlyMap<string, Verdict>
  /** What flashes, of the entries where anything does. */
  readonly flashes: ReadonlyMap<string, CueFlashes>
  /** How many were entered. */
  readonly version: number
  /** What was entered last, and where its cue begins. */
  readonly latest?: { readonly verdict: Verdict; readonly key: string; readonly first: Frame }
}

export const NO_VERDICTS: VerdictBook = { entries: new Map(), flashes: new Map(), version: 0 }

/** Like the entries, flashes are entered in place; those of the first book are nobody's. */
const withFlashes = (
  flashes: VerdictBook['flashes'],
  key: string,
  flashing: CueFlashes,
): VerdictBook['flashes'] =>
  (flashes === NO_VERDICTS.flashes
    ? new Map<string, CueFlashes>()
    : (flashes as Map<string, CueFlashes>)
  ).set(key, flashing)

/** A book with one verdict more: that of the cue that begins on `first`, and what flashes in it. */
export const withVerdict = (
  { entries, flashes, version }: VerdictBook,
  key: string,
  verdict: Verdict,
  first: Frame,
  flashing?: CueFlashes,
): VerdictBook => ({
  entries: (version === 0 ? new Map<string, Verdict>() : (entries as Map<string, Verdict>)).set(
    key,
    verdict,
  ),
  flashes: flashing ? withFlashes(flashes, key, flashing) : flashes,
  version: version + 1,
  latest: { verdict, key, first },
})

/** Whether a book is another with one verdict more. */
export const isNext = (book: VerdictBook, before: VerdictBook): boolean =>
  book.version === before.version + 1 && (before.version === 0 || book.entries === before.entries)
