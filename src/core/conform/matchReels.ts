import { findScanMove } from './findScanMove.ts'
import { commonArea } from './printArea.ts'
import { type ReelLooks, reelLooks } from './reelLooks.ts'
import { PRINT_WIDTH, type ReelPrints } from './reelPrints.ts'
import { NO_SCAN_MOVE, type ScanMove } from './scanMove.ts'
import { refinedRuns, type ShiftCandidate, shiftCandidates } from './shiftCandidates.ts'
import { type ShiftRun, shiftPath } from './shiftPath.ts'
import { stretchesForMove } from './stretchesForMove.ts'

/** Parts of a reel that are searched one by one: shots, and long ones in pieces. */
const LONGEST_PART = 250

/** Times that stretches are looked at again. */
const MOST_ROUNDS = 3

/** Frames on which shots, and changes from one to the next, begin; the reel's first among them. */
export const shotBeginnings = ({ boundaries, frames }: ReelPrints): readonly number[] =>
  [
    ...new Set([
      0,
      ...boundaries.flatMap(({ kind, first, last }) =>
        kind === 'cut' ? [first] : [first, last + 1],
      ),
    ]),
  ]
    .filter((n) => n >= 0 && n < frames)
    .sort((a, b) => a - b)

const partsOf = (beginnings: readonly number[], frames: number) =>
  beginnings.flatMap((from, place) => {
    const length = (beginnings[place + 1] ?? frames) - from
    const count = Math.ceil(length / LONGEST_PART)
    return Array.from({ length: count }, (_, k) => ({
      from: from + Math.floor((k * length) / count),
      to: from + Math.floor(((k + 1) * length) / count),
    }))
  })

/** Moves so little apart, in cells, find the same. */
const MOVES_APART = 0.03

const isNear = (a: ScanMove, b: ScanMove): boolean =>
  Math.abs(a.dx - b.dx) < MOVES_APART &&
  Math.abs(a.dy - b.dy) < MOVES_APART &&
  Math.abs(a.zoom - b.zoom) * (PRINT_WIDTH / 2) < MOVES_APART

/** What was found of a reel on another: which frames are which, and how the scans differ. */
export type ReelMatch = {
  readonly runs: readonly ShiftRun[]
  readonly move: ScanMove
  readonly old: ReelLooks
  readonly fresh: ReelLooks
}

/**
 * Finds the pictures of a reel on another scan or cut of it: first as they are, then with what
 * this shows of how the other scan is moved and grown.
 */
export const matchReels = (old: ReelPrints, fresh: ReelPrints): ReelMatch => {
  const area = commonArea(old.area, fresh.area)
  const oldShots = shotBeginnings(old)
  const freshShots = shotBeginnings(fresh)
  const parts = partsOf(freshShots, fresh.frames)
  const seen = reelLooks(fresh, area)
  const found = (
    looks: ReelLooks,
    move: ScanMove,
    candidates: readonly ShiftCandidate[],
  ): ReelMatch => {
    const runs = shiftPath(looks, seen, candidates, new Set(oldShots), new Set(freshShots))
    return { runs, move, old: looks, fresh: seen }
  }
  /** Each stretch at the shift that suits it best, as long as that changes anything. */
  const settle = (looks: ReelLooks, move: ScanMove): ReelMatch => {
    let candidates = shiftCandidates(looks, seen, parts, oldShots)
    let match = found(looks, move, candidates)
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const added = refinedRuns(looks, seen, match.runs)
      if (added.length === 0) break
      candidates = [...candidates, ...added]
      match = found(looks, move, candidates)
    }
    return match
  }
  let match = settle(reelLooks(old, area), NO_SCAN_MOVE)
  for (let pass = 0; pass < 2; pass++) {
    const move = findScanMove(
      old,
      fresh,
      stretchesForMove(match, oldShots, freshShots),
      area,
      match.move,
    )
    if (isNear(move, match.move)) break
    match = settle(reelLooks(old, area, move), move)
  }
  return match
}
