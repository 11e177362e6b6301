import type { JsonNode } from '../../base/json/jsonNode.ts'
import { memberOf } from '../../base/json/jsonNode.ts'
import type { Rate } from '../../time/rate.ts'
import type { Chosen } from './chooseTrack.ts'
import { clipRangeNode } from './clipMedia.ts'
import { isOf, listOf } from './otioSchema.ts'
import { listRate, readRange, readTime } from './otioTime.ts'

/** Units a second of the first range among these items, at whatever depth. */
const firstRate = (items: readonly JsonNode[]): number | undefined => {
  for (const item of items) {
    const isClip = isOf(item, 'Clip')
    const range = readRange(isClip ? clipRangeNode(item) : memberOf(item, 'source_range'))
    const rate = range?.duration.rate ?? firstRate(listOf(item, 'children'))
    if (rate !== undefined) return rate
  }
  return undefined
}

/** The rate that a list's times are counted at; undefined where it has no times. */
export const findRate = (
  { items, globalStart }: Chosen,
  reelRate: Rate | undefined,
): Rate | undefined => {
  const rate = firstRate(items) ?? readTime(globalStart)?.rate
  return rate === undefined ? undefined : listRate(rate, reelRate)
}
