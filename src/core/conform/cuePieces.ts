import { cueEnd, cueIndexAt } from '../job/cueList.ts'
import type { Cue } from '../job/job.ts'
import { frame } from '../time/frame.ts'
import type { FoundStretch } from './reconformPlan.ts'

/** Fewer frames that are found nowhere go with the cue before them, unless they are a shot. */
const LEAST_NEW = 12

/** So few frames say little of a longer cue. */
export const FEW_FRAMES = 12

/** Fewer frames of a longer cue than this are a slip of where its neighbour ends. */
const LEAST_FOUND = 3

/** Frames in a row of the new reel that belong to one cue, or to none (undefined). */
export type CuePiece = {
  readonly from: number
  readonly to: number
  readonly cue: number | undefined
  /** The first of the old reel's frames in it. */
  readonly oldFrom: number
  readonly found: number
  readonly sure: number
  readonly slack: number
  readonly doubt: string
}

const noCue = (from: number, to: number): CuePiece => ({
  from,
  to,
  cue: undefined,
  oldFrom: 0,
  found: 0,
  sure: 0,
  slack: 0,
  doubt: '',
})

/** What was found, cut where cues begin, with what lies between. */
const piecesOf = (
  stretches: readonly FoundStretch[],
  cues: readonly Cue[],
  oldFrames: number,
  frames: number,
): readonly CuePiece[] => {
  const pieces: CuePiece[] = []
  let end = 0
  for (const { from, to, shift, sure, slack, doubt } of stretches) {
    if (from > end) pieces.push(noCue(end, from))
    for (let n = from; n < to; ) {
      const cue = cueIndexAt(cues, frame(n - shift))
      const end = cueEnd(cues, cue, oldFrames)
      const stop = Math.min(to, end + shift)
      const found = stop - n
      const isSlip = found < LEAST_FOUND && end - (cues[cue]?.first ?? 0) >= FEW_FRAMES
      pieces.push(
        isSlip
          ? noCue(n, stop)
          : { from: n, to: stop, cue, oldFrom: n - shift, found, sure, slack, doubt },
      )
      n = stop
    }
    end = to
  }
  if (frames > end) pieces.push(noCue(end, frames))
  return pieces
}

/** A piece with what is found of the next one added to it. */
const withNext = (piece: CuePiece, next: CuePiece): CuePiece => {
  const found = piece.found + next.found
  const sure = found > 0 ? (piece.sure * piece.found + next.sure * next.found) / found : piece.sure
  return { ...piece, to: next.to, found, sure, doubt: piece.doubt || next.doubt }
}

/**
 * What was found of a reel on another, cut where its cues begin, with what lies between. Frames
 * that are found nowhere are a piece if they are `LEAST_NEW` or just a shot (`isShot`); else they
 * go to the cue before. Pieces of one cue that follow each other are one.
 */
export const cuePieces = (
  stretches: readonly FoundStretch[],
  cues: readonly Cue[],
  oldFrames: number,
  frames: number,
  isShot: (from: number, to: number) => boolean,
): readonly CuePiece[] => {
  const isOwn = ({ from, to, cue }: CuePiece): boolean =>
    cue !== undefined || to - from >= LEAST_NEW || isShot(from, to)
  const out: CuePiece[] = []
  for (const piece of piecesOf(stretches, cues, oldFrames, frames)) {
    const last = out.at(-1)
    const goesOn = piece.cue !== undefined && piece.cue === last?.cue
    if (last && (goesOn || !isOwn(piece))) out[out.length - 1] = withNext(last, piece)
    else if (last && !isOwn(last)) out[out.length - 1] = { ...piece, from: last.from }
    else out.push(piece)
  }
  return out
}
