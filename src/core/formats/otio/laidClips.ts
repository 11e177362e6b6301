import { isNull, type JsonNode, type JsonRecord, memberOf } from '../../base/json/jsonNode.ts'
import type { Rate } from '../../time/rate.ts'
import { clipRangeNode } from './clipMedia.ts'
import { isOf, listOf, quoted, schemaOf } from './otioSchema.ts'
import type { Telling } from './otioTelling.ts'
import { type OtioRange, readRange, timeInFrames } from './otioTime.ts'

/** A clip in its place, in frames from where its list begins; not always whole. */
export type LaidClip = {
  readonly clip: JsonRecord
  /** undefined where something before it does not say how long it is. */
  readonly from: number | undefined
  readonly to: number | undefined
  /** Frames that something around it cuts off its beginning. */
  readonly head: number
  readonly transition: JsonRecord | undefined
  /** What stands before it, and is no clip, to be kept with it. */
  readonly before: readonly JsonNode[]
}

/** Clips in order, how long all is, and what stands after the last clip. */
export type Laid = {
  readonly clips: readonly LaidClip[]
  readonly length: number | undefined
  readonly after: readonly JsonNode[]
}

/** The range of a clip or of what holds clips; refuses one that is there and is none. */
export const rangeOf = (node: JsonRecord, { refuse }: Telling): OtioRange | undefined => {
  const spelt = isOf(node, 'Clip') ? clipRangeNode(node) : memberOf(node, 'source_range')
  if (!spelt || isNull(spelt)) return undefined
  const range = readRange(spelt)
  if (!range)
    refuse(
      'malformed',
      `${quoted(node)} has a range that is none: it needs a start and a duration of 0 or more, both finite and of a rate above 0.`,
      spelt,
    )
  return range
}

/** The same, that much later. */
export const shifted = (laid: LaidClip, by: number | undefined): LaidClip => ({
  ...laid,
  from: laid.from === undefined || by === undefined ? undefined : laid.from + by,
  to: laid.to === undefined || by === undefined ? undefined : laid.to + by,
})

/**
 * What `holder` makes of the clips in it: its source range shifts them, and cuts off what is
 * outside it. A range that starts below 0 only shifts: translators of event lists write the record
 * time of a list so (common practice, no published source).
 */
export const trimmed = (
  laid: Laid,
  holder: JsonRecord,
  frameRate: Rate,
  telling: Telling,
): Laid => {
  const range = rangeOf(holder, telling)
  if (!range) return laid
  const start = timeInFrames(range.start, frameRate)
  const length = timeInFrames(range.duration, frameRate)
  const clips: LaidClip[] = []
  let loose: JsonNode[] = []
  const put = (each: LaidClip): void => {
    clips.push(loose.length === 0 ? each : { ...each, before: [...loose, ...each.before] })
    loose = []
  }
  for (const each of laid.clips) {
    const moved = shifted(each, -start)
    const { from, to } = moved
    if (start < 0 || from === undefined || to === undefined) put(moved)
    else if (to <= 0 || from >= length) {
      telling.tell(
        'out-of-range',
        `${quoted(each.clip)} is outside the range of the ${schemaOf(holder)?.name.toLowerCase()} it is in, and is not taken.`,
        each.clip,
      )
      for (const node of each.before) loose.push(node)
      loose.push(each.clip)
    } else
      put({
        ...moved,
        from: Math.max(from, 0),
        to: Math.min(to, length),
        head: moved.head + Math.max(-from, 0),
      })
  }
  return { clips, length, after: [...loose, ...laid.after] }
}

/** How long an item is without laying it; undefined where it does not say. */
export const lengthOf = (node: JsonNode, frameRate: Rate): number | undefined => {
  if (isOf(node, 'Transition')) return 0
  const isClip = isOf(node, 'Clip')
  const range = readRange(isClip ? clipRangeNode(node) : memberOf(node, 'source_range'))
  if (range) return timeInFrames(range.duration, frameRate)
  const isStack = isOf(node, 'Stack')
  if (!isStack && !isOf(node, 'Track')) return isClip || isOf(node, 'Gap') ? undefined : 0
  return listOf(node, 'children').reduce<number | undefined>((sum, child) => {
    const length = lengthOf(child, frameRate)
    if (sum === undefined || length === undefined) return undefined
    return isStack ? Math.max(sum, length) : sum + length
  }, 0)
}
