import type { JsonNode } from '../../base/json/jsonNode.ts'
import { isOurs } from './keptOtio.ts'
import type { Laid } from './laidClips.ts'
import { isOf, listOf } from './otioSchema.ts'
import type { Telling } from './otioTelling.ts'

const COUNTED: readonly (readonly [list: string, one: string, many: string])[] = [
  ['effects', 'effect', 'effects'],
  ['markers', 'marker', 'markers'],
]

/** Tells once of what clips carry that a cue has no field for, and of gaps between them. */
export const tellOfKept = (
  { clips }: Laid,
  items: readonly JsonNode[],
  { tell }: Telling,
): void => {
  for (const [list, one, many] of COUNTED) {
    const all = clips.flatMap(({ clip }) => listOf(clip, list).filter((each) => !isOurs(each)))
    const [first] = all
    if (first)
      tell(
        'not-stated',
        `${all.length === 1 ? `1 ${one} of clips is` : `${all.length} ${many} of clips are`} not applied or shown, but kept and written back.`,
        first,
      )
  }
  const gaps = items.filter((item) => isOf(item, 'Gap'))
  const [first] = gaps
  if (first)
    tell(
      'not-stated',
      `${gaps.length === 1 ? '1 gap is' : `${gaps.length} gaps are`} kept, and written back beside the clips next to them.`,
      first,
    )
}
