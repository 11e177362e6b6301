import * as v from 'valibot'
import {
  type JsonNode,
  type JsonRecord,
  memberAt,
  memberOf,
  numberOf,
} from '../../base/json/jsonNode.ts'
import { plainJson } from '../../base/json/plainJson.ts'
import type { Grade } from '../../colour/grade.ts'
import { checkGrade } from '../../job/checkGrade.ts'
import type { DecisionValues } from '../decisionList.ts'
import { cueSchema } from '../job/jobSchema.ts'
import { quoted } from './otioSchema.ts'
import type { Telling } from './otioTelling.ts'

/** Our namespace in metadata, and the version of what is in it. */
export const OWN = 'reelwright'
export const OWN_VERSION = 1

/** What is read back of a clip in our namespace: fields of a cue, as the job file has them. */
const READ = [
  'ramp',
  'rampShape',
  'boundary',
  'grade',
  'gradeName',
  'alternates',
  'framing',
  'scene',
  'note',
] as const

/** What is written into it, so that it is not kept as words of others. */
export const OWN_OF_CLIP: readonly string[] = [
  'version',
  'cue',
  'name',
  'agreement',
  'agreedLook',
  'answers',
  ...READ,
]
export const OWN_OF_TIMELINE: readonly string[] = ['version', 'name', 'reel', 'tolerance']

/** What is in our namespace, if it is a record at all. */
export const ownOf = (record: JsonNode): JsonRecord | undefined => {
  const own = memberAt(record, 'metadata', OWN)
  return own?.kind === 'record' ? own : undefined
}

/** Whether what is in our namespace was written by this program, in a version it knows. */
export const isOfOurHand = (own: JsonRecord): boolean =>
  numberOf(memberOf(own, 'version')) === OWN_VERSION

const gradesOf = (values: DecisionValues): readonly Grade[] => [
  ...(values.grade ? [values.grade] : []),
  ...(values.alternates ?? []).map(({ grade }) => grade),
]

/** One field as a cue has it; undefined where it is not such a field, which is told. */
const readField = (
  name: (typeof READ)[number],
  node: JsonNode,
  clip: JsonNode,
  { tell }: Telling,
): DecisionValues => {
  const read = v.safeParse(cueSchema.entries[name], plainJson(node), { abortEarly: true })
  const values = read.success ? ({ [name]: read.output } as unknown as DecisionValues) : undefined
  if (values && gradesOf(values).every((grade) => checkGrade(grade).ok)) return values
  tell(
    'out-of-range',
    `${quoted(clip)}: “${OWN}.${name}” is not as this program writes it, and is not taken.`,
    node,
  )
  return {}
}

/** The values of a cue that a clip has in our namespace. Each that is amiss is told and left out. */
export const readOwn = (clip: JsonNode, telling: Telling): DecisionValues => {
  const space = memberAt(clip, 'metadata', OWN)
  const own = ownOf(clip)
  if (!space) return {}
  if (!own || !isOfOurHand(own)) {
    telling.tell(
      'newer-version',
      `${quoted(clip)}: what is in “${OWN}” is not of version ${OWN_VERSION}, and is not taken.`,
      space,
    )
    return {}
  }
  return Object.assign(
    {},
    ...READ.map((name) => {
      const node = memberOf(own, name)
      return node ? readField(name, node, clip, telling) : {}
    }),
  )
}
