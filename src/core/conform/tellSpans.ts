import { type Problem, problem } from '../base/problem.ts'
import type { Span } from '../formats/decisionList.ts'

const frames = (count: number): string => `${count} frame${count === 1 ? '' : 's'}`

/** Spans as far as they lie on a reel, in order of their beginnings. */
const spansOnReel = (spans: readonly Span[], reelFrames: number): readonly Span[] =>
  spans
    .filter(({ from, to }) => to > from && from < reelFrames && to > 0)
    .map(({ from, to }) => ({ from: Math.max(0, from), to: Math.min(to, reelFrames) }))
    .sort((a, b) => a.from - b.from)

/** Tells once of frames of the reel between spans that no decision is about. */
export const tellGaps = (spans: readonly Span[], reelFrames: number): readonly Problem[] => {
  const onReel = spansOnReel(spans, reelFrames)
  let gaps = 0
  let between = 0
  let end = onReel[0]?.from ?? 0
  for (const { from, to } of onReel) {
    if (from > end) {
      gaps++
      between += from - end
    }
    end = Math.max(end, to)
  }
  if (gaps === 0) return []
  const says = `The list leaves ${gaps === 1 ? 'a gap' : `${gaps} gaps`}, ${frames(between)} in all; no cue begins there, the cue before goes on.`
  return [problem('not-stated', says)]
}

/**
 * Tells once of decisions that begin before an earlier one ends, and how many frames are in more
 * than one. A cue ends where the next begins: the rest of the earlier one is lost.
 */
export const tellOverlaps = (spans: readonly Span[], reelFrames: number): readonly Problem[] => {
  let overlapping = 0
  let twice = 0
  let end = 0
  let twiceEnd = 0
  for (const { from, to } of spansOnReel(spans, reelFrames)) {
    const until = Math.min(to, end)
    if (until > from) {
      overlapping++
      twice += Math.max(0, until - Math.max(from, twiceEnd))
      twiceEnd = Math.max(twiceEnd, until)
    }
    end = Math.max(end, to)
  }
  if (overlapping === 0) return []
  const says = `${overlapping === 1 ? '1 decision begins' : `${overlapping} decisions begin`} before an earlier one ends, ${frames(twice)} in all; a cue ends where the next begins, so these frames go to the later one, as does what is left of the earlier after it.`
  return [problem('conflict', says)]
}

/**
 * Tells of frames after the end of a list that its last cue goes on over: up to the next of the
 * cues that stay, given by their first frames in order, or to the end of the reel.
 */
export const tellEnd = (
  spans: readonly Span[],
  reelFrames: number,
  staying: readonly { readonly number: number; readonly first: number }[],
): readonly Problem[] => {
  const onReel = spansOnReel(spans, reelFrames)
  const last = onReel.at(-1)
  if (!last) return []
  const end = onReel.reduce((latest, { to }) => Math.max(latest, to), 0)
  const next = staying.find(({ first }) => first > last.from)
  const rest = (next?.first ?? reelFrames) - end
  if (rest <= 0) return []
  const says = next
    ? `The list ends ${frames(rest)} before cue ${next.number} begins; its last cue goes on up to it.`
    : `The list ends ${frames(rest)} before the reel does; its last cue goes on to the end.`
  return [problem('not-stated', says)]
}
