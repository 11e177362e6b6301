import type { FoundFrames } from './findScanMove.ts'
import { correlation, type ReelLooks } from './reelLooks.ts'
import type { ShiftRun } from './shiftPath.ts'

/** Pieces by which the move of a scan is found, their longest, and frames of each. */
const MOST_PIECES = 16
const LONGEST_PIECE = 80
const LEAST_PIECE = 8
const FRAMES_A_PIECE = 5

/** With so many pieces whose time is certain no others are asked. */
const ENOUGH_CERTAIN = 6

/** Shifts tried where the time is not certain. */
const SHIFTS = [-12, -10, -8, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 8, 10, 12]

/** Contrast, as signal, below which a picture does not tell where it is. */
const LEAST_CONTRAST = 0.03

/** Frames apart of which the picture is asked whether it stands still. */
const STILL_OVER = 5

type Piece = FoundFrames & { readonly isCertain: boolean; readonly motion: number }

/** Items spread evenly over a list, at most so many. */
const someOf = <Item>(items: readonly Item[], most: number): readonly Item[] => {
  const every = Math.max(1, items.length / most)
  return items.filter((_, k) => Math.floor(k / every) !== Math.floor((k - 1) / every))
}

/**
 * Pieces of what was found that tell how one scan is moved against the other. Those of runs with a
 * change of shot inside, which both reels have, are certain in time. Others are tried under some
 * shifts, and preferred where they stand still: a slow move of the camera cannot be told from a
 * move of the scan.
 */
export const stretchesForMove = (
  { runs, old }: { readonly runs: readonly ShiftRun[]; readonly old: ReelLooks },
  oldShots: readonly number[],
  freshShots: readonly number[],
): readonly FoundFrames[] => {
  const isOldShot = new Set(oldShots)
  const pieces = runs.flatMap(({ from, to, shift }): readonly Piece[] => {
    if (shift === undefined) return []
    const inside = freshShots.filter((n) => n > from && n < to && isOldShot.has(n - shift))
    const edges = [from, ...inside, to]
    return edges.slice(0, -1).flatMap((begin, place) => {
      const length = Math.min((edges[place + 1] ?? begin) - begin, LONGEST_PIECE)
      const fresh = Array.from(
        { length: FRAMES_A_PIECE },
        (_, k) => begin + Math.floor(((k + 0.5) * length) / FRAMES_A_PIECE),
      ).filter((n) => (old.deviations[n - shift] ?? 0) > LEAST_CONTRAST)
      if (length < LEAST_PIECE || fresh.length < 2) return []
      const isCertain = inside.length > 0
      const tried = (isCertain ? [0] : SHIFTS).filter((by) =>
        fresh.every((n) => n - shift - by >= 0 && n - shift - by < old.frames),
      )
      const motion = Math.max(
        ...fresh.map((n) => {
          const other = n - shift + STILL_OVER < old.frames ? STILL_OVER : -STILL_OVER
          return 1 - correlation(old, n - shift, old, n - shift + other)
        }),
      )
      const shifted = tried.map((by) => fresh.map((n) => n - shift - by))
      return [{ fresh, old: shifted, own: tried.indexOf(0), isCertain, motion }]
    })
  })
  const certain = pieces.filter(({ isCertain }) => isCertain)
  if (certain.length >= ENOUGH_CERTAIN) return someOf(certain, MOST_PIECES)
  const still = pieces
    .filter(({ isCertain }) => !isCertain)
    .toSorted((a, b) => a.motion - b.motion)
    .slice(0, ENOUGH_CERTAIN)
  return [...certain, ...still]
}
