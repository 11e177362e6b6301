import type { Problem } from '../base/problem.ts'
import { cueEnd, cuesOfReel } from '../job/cueList.ts'
import type { BoundaryFound, Cue, HeldFrame, Job, Reel } from '../job/job.ts'
import type { CuePlacement } from '../shots/cuesFromBoundaries.ts'
import { type Frame, frame } from '../time/frame.ts'
import { type CuePiece, cuePieces, FEW_FRAMES } from './cuePieces.ts'
import type { FoundStretch, ReconformAdded, ReconformPlan, ReconformRow } from './reconformPlan.ts'

/** A change of shot this near is the one that a new stretch begins with. */
const NEAR_SHOT = 2
const NEAR_SHOTS = [0, -1, 1, -2, NEAR_SHOT]

/** A cue of which less than this part, and less than `FEW_FRAMES`, is found is doubtful. */
const SMALL_PART = 0.25

/** Less sure than this a cue is doubtful. */
const SURE_FROM = 0.5

/** A slack of this many frames may be more. */
const MOST_TOLD = 12

/** The piece a cue goes to: that with its first frame, unless little else of it is there. */
const homeOf = (pieces: readonly CuePiece[], cue: Cue): CuePiece | undefined => {
  const byLength = pieces.toSorted((a, b) => b.found - a.found)
  const longest = byLength[0]
  const begun = byLength.find(({ oldFrom }) => oldFrom === cue.first)
  const isEnough = (found: number): boolean =>
    found >= FEW_FRAMES || 2 * found >= (longest?.found ?? 0)
  return begun && isEnough(begun.found) ? begun : longest
}

const many = (count: number, of: string): string => `${count} ${of}${count === 1 ? '' : 's'}`

type Follows = ReconformPlan['follows']

/** Where frames are that were found. */
const THERE: Readonly<Record<Follows, string>> = { pictures: 'there', list: 'in the list' }

const headWords = (trimmed: number, there: string): string => {
  if (trimmed <= 0) return ''
  return trimmed === 1
    ? `Its first frame is not ${there}.`
    : `Its first ${trimmed} frames are not ${there}.`
}

type Told = {
  readonly follows: Follows
  readonly again: number
  readonly isAtShot: boolean
  readonly isPart: boolean
}

const wordsOf = (home: CuePiece, cue: Cue, { follows, again, isAtShot, isPart }: Told): string =>
  [
    headWords(home.oldFrom - cue.first, THERE[follows]),
    isPart
      ? `Just ${many(home.found, 'frame')} of it ${home.found === 1 ? 'is' : 'are'} ${THERE[follows]}.`
      : '',
    home.slack > 0 && !isAtShot
      ? `Its picture moves too little to tell its frame: it may be ${many(home.slack, 'frame')} off${home.slack >= MOST_TOLD ? ' or more' : ''}.`
      : '',
    home.doubt,
    again > 0
      ? `${follows === 'list' ? 'The list has it' : 'Its picture comes'} ${many(again, 'more time')}.`
      : '',
  ]
    .filter((words) => words !== '')
    .join(' ')

/**
 * The plan by which cues follow what was found of their pictures. `stretches` are in order and
 * apart from each other, within both reels; `placements` are the shot changes of the new one.
 */
export const followStretches = (
  job: Job,
  reel: Reel,
  stretches: readonly FoundStretch[],
  frames: number,
  placements: readonly CuePlacement[],
  notTaken: readonly Problem[],
  follows: Follows = 'pictures',
): ReconformPlan => {
  const cues = cuesOfReel(job, reel.id)
  const placedOn = new Map<number, CuePlacement>(placements.map((each) => [each.first, each]))
  const near = (n: number): CuePlacement | undefined =>
    NEAR_SHOTS.map((by) => placedOn.get(n + by)).find((each) => each !== undefined)
  const isEdge = (n: number): boolean => n === 0 || n === frames || near(n) !== undefined
  const pieces = cuePieces(
    stretches,
    cues,
    reel.frames,
    frames,
    (from, to) => to - from > 2 * NEAR_SHOT && isEdge(from) && isEdge(to),
  )
  const byCue = new Map<number, CuePiece[]>(cues.map((_, index) => [index, []]))
  for (const piece of pieces) if (piece.cue !== undefined) byCue.get(piece.cue)?.push(piece)
  const homes = cues.map((cue, index) => homeOf(byCue.get(index) ?? [], cue))
  const rows = cues.map((cue, index): ReconformRow => {
    const length = cueEnd(cues, index, reel.frames) - cue.first
    const base = { number: index + 1, cue, frames: length }
    const home = homes[index]
    if (!home)
      return {
        ...base,
        outcome: 'lost',
        first: undefined,
        sure: 0,
        found: 0,
        says: follows === 'list' ? 'It is not in the list.' : 'Its picture is not found.',
      }
    const isPart = home.found < FEW_FRAMES && home.found < SMALL_PART * length
    return {
      ...base,
      outcome: home.sure < SURE_FROM || home.doubt !== '' || isPart ? 'doubtful' : 'follows',
      first: frame(home.from),
      sure: home.sure,
      found: Math.min(home.found, length),
      says: wordsOf(home, cue, {
        follows,
        again: (byCue.get(index)?.length ?? 1) - 1,
        isAtShot: isEdge(home.from),
        isPart,
      }),
    }
  })
  const added = pieces.flatMap((piece): readonly ReconformAdded[] => {
    const { from, to, cue, sure } = piece
    if (cue !== undefined)
      return homes[cue] === piece
        ? []
        : [{ first: frame(from), again: cues[cue], ramp: 0, boundary: boundaryAt(from, sure) }]
    const inside = placements.filter(({ first }) => first > from + NEAR_SHOT && first < to)
    const begin = near(from)
    return [
      {
        first: frame(from),
        again: undefined,
        ramp: from === 0 ? 0 : (begin?.ramp ?? 0),
        boundary: begin && from > 0 ? foundAs(begin) : boundaryAt(from, SURE_FROM),
      },
      ...inside.map((each) => ({
        first: each.first,
        again: undefined,
        ramp: each.ramp,
        boundary: foundAs(each),
      })),
    ]
  })
  const heldHere = Object.values<HeldFrame>(job.held).filter((held) => held.reel === reel.id)
  return {
    follows,
    reel,
    frames,
    rows,
    added,
    held: heldHere.map((held) => ({ held, frame: movedFrame(stretches, held.frame) })),
    notTaken,
  }
}

const foundAs = ({ kind, confidence }: CuePlacement): BoundaryFound => ({ kind, confidence })

const boundaryAt = (first: number, confidence: number): BoundaryFound =>
  first === 0 ? { kind: 'start', confidence: 1 } : { kind: 'cut', confidence }

/** Where a frame of the old reel is first seen on the new one. */
const movedFrame = (stretches: readonly FoundStretch[], old: Frame): Frame | undefined => {
  const stretch = stretches.find(({ from, to, shift }) => old + shift >= from && old + shift < to)
  return stretch && frame(old + stretch.shift)
}
