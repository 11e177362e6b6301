import { cueIndexAt } from '../job/cueList.ts'
import type { Cue } from '../job/job.ts'
import { frame } from '../time/frame.ts'
import { conflict, type ImportFate, type ImportWish } from './importWishes.ts'

/** A cue within so many frames of a decision is the one that moves to it. */
export const REACH = 5

const STAYS = 'The first cue of a reel stays on its first frame.'

/** Pairs of a decision and a cue that begins near it, the nearest first. */
const nearPairs = (
  wishes: readonly ImportWish[],
  cues: readonly Cue[],
  isOpen: (index: number) => boolean,
) => {
  const pairs: { index: number; cue: number; by: number }[] = []
  for (const [index, { span }] of wishes.entries()) {
    if (!span || !isOpen(index)) continue
    const from = cueIndexAt(cues, frame(span.from - REACH - 1)) + 1
    for (let cue = from; cue < cues.length; cue++) {
      const by = Math.abs((cues[cue]?.first ?? Number.POSITIVE_INFINITY) - span.from)
      // A cue that begins where the decision ends is the next one's.
      if (by > REACH || (cues[cue]?.first ?? 0) >= span.to) break
      pairs.push({ index, cue, by })
    }
  }
  return pairs.sort((a, b) => a.by - b.by || a.index - b.index)
}

/** Which cue each decision is about; none where it begins one. A cue is given away once. */
const matchCues = (
  wishes: readonly ImportWish[],
  cues: readonly Cue[],
  isByOrder: boolean,
): readonly (number | undefined)[] => {
  const given = new Map<number, number>()
  const cueOf: (number | undefined)[] = wishes.map(() => undefined)
  const give = (index: number, cue: number): void => {
    if (given.has(cue) || cueOf[index] !== undefined) return
    given.set(cue, index)
    cueOf[index] = cue
  }
  const isOpen = (index: number): boolean => !wishes[index]?.refused && cueOf[index] === undefined
  const open = (): readonly number[] => [...wishes.keys()].filter(isOpen)
  if (!isByOrder)
    for (const index of open()) {
      const from = wishes[index]?.span?.from
      const at = from === undefined ? -1 : cueIndexAt(cues, frame(from))
      if (at >= 0 && cues[at]?.first === from) give(index, at)
    }
  for (const index of open()) {
    const span = wishes[index]?.span
    if (span && span.from < 0 && span.to > 0) give(index, 0)
  }
  for (const index of open()) {
    const { cue, span } = wishes[index] as ImportWish
    const isFarFromFirst = cue === 0 && !isByOrder && span && span.from > REACH
    if (cue !== undefined && !isFarFromFirst) give(index, cue)
  }
  for (const { index, cue } of nearPairs(wishes, cues, isOpen)) give(index, cue)
  return cueOf
}

/** A decision's way to a place, before it is known whether all of them can hold together. */
const firstFate = (
  { span, cue: named, says, refused }: ImportWish,
  cue: number | undefined,
  cues: readonly Cue[],
  reelFrames: number,
): ImportFate => {
  if (refused) return refused
  const now = cue === undefined ? undefined : cues[cue]?.first
  if (!span) {
    if (cue !== undefined) return { outcome: 'matches', cue, first: now, says }
    return conflict(`Another decision goes to cue ${(named ?? 0) + 1} already.`)
  }
  const { from } = span
  if (cue === 0) return { outcome: 'matches', cue, first: now, says: from === now ? says : STAYS }
  if (from < 0 || from >= reelFrames) return conflict('Its place is outside the reel.')
  if (cue === undefined) return { outcome: 'begins', cue, first: from, says: '' }
  return { outcome: from === now ? 'matches' : 'moves', cue, first: from, says }
}

/** Calls off moves by which a cue would pass, or come to the frame of, another one. */
const keepOrder = (fates: ImportFate[], cues: readonly Cue[]): void => {
  const mover = new Map<number, number>()
  for (const [index, { outcome, cue }] of fates.entries())
    if (outcome === 'moves' && cue !== undefined) mover.set(cue, index)
  const firstOf = (cue: number): number => {
    const index = mover.get(cue)
    return (index === undefined ? undefined : fates[index]?.first) ?? cues[cue]?.first ?? 0
  }
  const callOff = (cue: number, other: number): void => {
    const index = mover.get(cue)
    if (index === undefined) return
    mover.delete(cue)
    fates[index] = conflict(
      `Cue ${cue + 1} cannot move there past cue ${other + 1}.`,
      fates[index]?.first,
    )
  }
  for (let isSettled = false; !isSettled; ) {
    isSettled = true
    for (let cue = 1; cue < cues.length; cue++) {
      if (firstOf(cue) > firstOf(cue - 1)) continue
      isSettled = false
      const [a, b] = [mover.has(cue - 1), mover.has(cue)]
      if (b) callOff(cue, cue - 1)
      if (a) callOff(cue - 1, cue)
    }
  }
}

/** Of decisions that would begin on one frame the first does; none begins where a cue stays. */
const keepApart = (fates: ImportFate[], cues: readonly Cue[]): void => {
  const moved = new Set(fates.flatMap(({ outcome, cue }) => (outcome === 'moves' ? [cue] : [])))
  const staying = new Map(
    cues.flatMap(({ first }, cue) => (moved.has(cue) ? [] : [[first as number, cue] as const])),
  )
  const begun = new Map<number, number>()
  for (const [index, { outcome, first }] of fates.entries())
    if (outcome === 'moves' && first !== undefined) begun.set(first, index)
  for (const [index, { outcome, first }] of fates.entries()) {
    if (outcome !== 'begins' || first === undefined) continue
    const cue = staying.get(first)
    const other = begun.get(first)
    if (cue !== undefined) fates[index] = conflict(`Cue ${cue + 1} begins on its frame.`, first)
    else if (other !== undefined)
      fates[index] = conflict(`Decision ${other + 1} begins on its frame.`, first)
    else begun.set(first, index)
  }
}

/**
 * What becomes of decisions whose places are taken. A decision is about the cue that begins on its
 * frame, else the one it names or is counted to, else the nearest one within `REACH` that no other
 * decision is nearer to, which moves; else a cue begins for it. Cues keep their order, no two
 * begin on one frame, and the first stays on the reel's first frame.
 */
export const takePlaces = (
  wishes: readonly ImportWish[],
  cues: readonly Cue[],
  reelFrames: number,
  isByOrder: boolean,
): readonly ImportFate[] => {
  const cueOf = matchCues(wishes, cues, isByOrder)
  const fates = wishes.map((wish, index) => firstFate(wish, cueOf[index], cues, reelFrames))
  keepOrder(fates, cues)
  keepApart(fates, cues)
  return fates
}
