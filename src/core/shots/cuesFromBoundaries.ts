import type { Frame } from '../time/frame.ts'
import type { Boundary, BoundaryKind } from './boundary.ts'

/** Where a cue is to begin because of a shot change. */
export type CuePlacement = {
  readonly first: Frame
  /** Frames over which values move: the length of a gradual change, 0 for a cut. */
  readonly ramp: number
  readonly kind: BoundaryKind
  readonly confidence: number
}

/** A fade out and what follows it are one change when at most this much black lies between. */
const LONGEST_BLACK = 75

const placement = (first: Boundary, last: Boundary, kind: BoundaryKind): CuePlacement => ({
  first: first.first,
  ramp: kind === 'cut' ? 0 : last.last - first.first + (last.kind === 'cut' ? 0 : 1),
  kind,
  confidence: Math.min(first.confidence, last.confidence),
})

/**
 * One cue for each change of shot: a cut begins it on its frame; a gradual change begins it on
 * its first frame with a ramp over the rest. A fade out with the fade in (or cut) after it is one
 * change; a fade in that nothing came before, or a fade out that nothing follows, is none.
 */
export const cuePlacements = (
  boundaries: readonly Boundary[],
  frames: number,
): readonly CuePlacement[] => {
  const placements: CuePlacement[] = []
  for (let i = 0; i < boundaries.length; i++) {
    const boundary = boundaries[i]
    if (!boundary || boundary.first <= 0 || boundary.first >= frames) continue
    if (boundary.first <= (placements.at(-1)?.first ?? 0)) continue
    const { kind } = boundary
    const following = boundaries[i + 1]
    if (kind === 'fade-in' && i === 0) continue
    if (kind === 'fade-out') {
      if (!following) continue
      const isOneChange =
        (following.kind === 'fade-in' || following.kind === 'cut') &&
        following.first - boundary.last <= LONGEST_BLACK + 1
      if (isOneChange) {
        placements.push(placement(boundary, following, 'fade-out'))
        i++
        continue
      }
    }
    placements.push(placement(boundary, boundary, kind))
  }
  return placements
}
