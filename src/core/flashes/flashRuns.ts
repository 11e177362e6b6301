import { type Frame, frame } from '../time/frame.ts'
import { type Rate, secondsAt } from '../time/rate.ts'
import { FLASHING_CHANGES, LONG_SEQUENCE, MOST_CHANGES } from './flashLimits.ts'
import type { FlashBreach, FlashKind, LongFlashing } from './flashReport.ts'

/** What one frame's changes come to, by both readings. Areas are parts of the picture. */
export type FlashTally = {
  readonly places: number
  readonly placesArea: number
  readonly picture: number
  readonly pictureArea: number
  /** Whether anything changes on the frame itself. */
  readonly isChanging: boolean
  /** The first of the changes that are too many; asked only where they are. */
  readonly since: () => number
}

const joined = (a: FlashBreach, b: FlashBreach): FlashBreach => ({
  kind: a.kind,
  first: frame(Math.min(a.first, b.first)),
  last: frame(Math.max(a.last, b.last)),
  changes: Math.max(a.changes, b.changes),
  area: Math.max(a.area, b.area),
  reading: a.reading === b.reading ? a.reading : 'both',
  isCautious: a.isCautious && b.isCautious,
})

/** Gathers the tallies of frames, in their order, into breaches and long sequences. */
export const createFlashRuns = (kind: FlashKind, rate: Rate) => {
  const breaches: FlashBreach[] = []
  const sequences: LongFlashing[] = []
  let wasOver = false
  let flashing: LongFlashing | undefined

  const addBreach = (now: Frame, tally: FlashTally): void => {
    const isPlaces = tally.places > MOST_CHANGES
    const isPicture = tally.picture > MOST_CHANGES
    const isOver = isPlaces || isPicture
    // The second that ends with a frame outlasts the flashes: only changes carry a breach on.
    if (isOver && (tally.isChanging || !wasOver)) {
      const changes = Math.max(tally.places, tally.picture)
      const breach: FlashBreach = {
        kind,
        first: frame(wasOver ? now : tally.since()),
        last: now,
        changes,
        area: Math.max(isPlaces ? tally.placesArea : 0, isPicture ? tally.pictureArea : 0),
        reading: isPlaces && isPicture ? 'both' : isPlaces ? 'places' : 'picture',
        isCautious: changes === MOST_CHANGES + 1,
      }
      const before = breaches.at(-1)
      if (before && (wasOver || breach.first <= before.last + 1))
        breaches[breaches.length - 1] = joined(before, breach)
      else breaches.push(breach)
    }
    wasOver = isOver
  }
  const addSequence = (now: Frame, tally: FlashTally): void => {
    const changes = Math.max(tally.places, tally.picture)
    if (changes < FLASHING_CHANGES) {
      flashing = undefined
      return
    }
    const isNew = flashing === undefined
    flashing = {
      kind,
      first: flashing?.first ?? now,
      last: now,
      changes: Math.max(changes, flashing?.changes ?? 0),
    }
    if (secondsAt(now - flashing.first, rate) <= LONG_SEQUENCE) return
    if (!isNew && sequences.at(-1)?.first === flashing.first) sequences.pop()
    sequences.push(flashing)
  }
  return {
    add: (now: Frame, tally: FlashTally): void => {
      addBreach(now, tally)
      addSequence(now, tally)
    },
    breaches: (): readonly FlashBreach[] => [...breaches],
    /** Those that comply: none that a breach reaches into. */
    long: (): readonly LongFlashing[] =>
      sequences.filter(({ first, last }) =>
        breaches.every((breach) => breach.last < first || breach.first > last),
      ),
  }
}
