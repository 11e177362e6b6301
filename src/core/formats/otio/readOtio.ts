import { isNull, type JsonNode } from '../../base/json/jsonNode.ts'
import { readJsonTree } from '../../base/json/readJsonTree.ts'
import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { Foreign } from '../../job/job.ts'
import { REEL_FOREIGN_LIMIT } from '../../job/limits.ts'
import type { Rate } from '../../time/rate.ts'
import type { Decision, DecisionList, ListTiming } from '../decisionList.ts'
import { type Chosen, chooseTrack } from './chooseTrack.ts'
import { findRate } from './findRate.ts'
import { keptOfDocument } from './keptOtio.ts'
import { layWithin } from './layClips.ts'
import { nameOf } from './otioSchema.ts'
import { type Telling, telling } from './otioTelling.ts'
import { readTime, timeInFrames, wholeFrames } from './otioTime.ts'
import { readClip } from './readClip.ts'
import { tellOfKept } from './tellOfKept.ts'

/** Where the list's time begins, in frames; 0 where it does not say, or not by a whole frame. */
const startOf = (
  { globalStart, isInTime }: Chosen,
  frameRate: Rate,
  { refuse, tell }: Telling,
): number | undefined => {
  if (!isInTime) return undefined
  if (!globalStart || isNull(globalStart)) return 0
  const time = readTime(globalStart)
  if (!time) {
    refuse(
      'malformed',
      'The list’s “global_start_time” is no time: it needs a finite value and a rate above 0.',
      globalStart,
    )
    return 0
  }
  const start = wholeFrames(timeInFrames(time, frameRate))
  if (start === undefined)
    tell(
      'out-of-range',
      'The list begins between two frames of its rate; its times are counted from 0 instead.',
      globalStart,
    )
  return start ?? 0
}

/** The document without what its decisions were read from; nothing, and told, where too long. */
const foreignOfList = (root: JsonNode, chosen: Chosen, { tell }: Telling): Foreign => {
  const text = keptOfDocument(root, chosen)
  if (text === undefined) return []
  if (text.length <= REEL_FOREIGN_LIMIT) return [{ format: 'otio', text }]
  tell(
    'too-large',
    `What else is in the list is more than ${REEL_FOREIGN_LIMIT} characters, and is not kept.`,
    root,
  )
  return []
}

/**
 * An OpenTimelineIO document (.otio): a timeline, or a bare stack, track, clip or collection. Its
 * decisions are the clips of the first layer of pictures that has any; whatever else is there is
 * kept, told of, or both. Times are counted at the rate of the first clip; where frames are not
 * counted at all (seconds, samples), at the rate of the reel that `timing` tells of. Times that
 * fall between two frames are left out and told. A document that is no such thing, or whose ranges
 * are none, is refused with the line.
 */
export const readOtio = (text: string, timing: ListTiming | undefined): Result<DecisionList> => {
  const tree = readJsonTree(text, { takesNonFinite: true })
  if (!tree.ok) return tree
  const root = tree.value
  const told = telling(text)
  const refusal = (): Result<never> => {
    const [first, ...rest] = told.refused
    return fail(
      first ?? problem('unknown-format', 'This is JSON, but no OpenTimelineIO.', { line: 1 }),
      ...rest,
    )
  }
  const chosen = chooseTrack(root, told)
  if (!chosen) return refusal()
  const rate = findRate(chosen, timing?.rate)
  // Without a rate there is no time to be counted, whatever stands here.
  const frameRate = rate ?? { num: 25, den: 1 }
  const laid = layWithin(chosen.items, chosen.around, frameRate, told)
  const start = startOf(chosen, frameRate, told)
  if (laid.clips.length === 0)
    told.refuse(
      'missing',
      'There is no clip of pictures in it that a decision could be read from.',
      root,
    )
  if (told.refused.length > 0) return refusal()
  const last = laid.clips.length - 1
  const decisions: Decision[] = laid.clips.map((each, index) => {
    const after = index === last ? laid.after : []
    const next = laid.clips[index + 1]
    return readClip({ laid: each, next, after, start, frameRate, telling: told })
  })
  tellOfKept(laid, chosen.items, told)
  const foreign = foreignOfList(root, chosen, told)
  return ok({
    format: 'otio',
    title: nameOf(chosen.titled),
    rate,
    decisions,
    foreign,
    notTaken: told.told(),
  })
}
