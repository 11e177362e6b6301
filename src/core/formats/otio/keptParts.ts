import { type JsonNode, type JsonRecord, memberOf } from '../../base/json/jsonNode.ts'
import { readJsonTree } from '../../base/json/readJsonTree.ts'
import { foreignOf } from '../../job/foreignOf.ts'
import type { Foreign } from '../../job/job.ts'
import { isNewer, isOf, listOf } from './otioSchema.ts'

/** What a cue keeps of a clip and of what stood around it. */
export type KeptParts = {
  readonly before: readonly JsonNode[]
  readonly clip: JsonRecord
  readonly after: readonly JsonNode[]
}

/** What was kept of an OpenTimelineIO list; undefined where nothing was, or it does not read. */
export const keptRecord = (foreign: Foreign): JsonRecord | undefined => {
  const text = foreignOf(foreign, 'otio')
  const tree = text === undefined ? undefined : readJsonTree(text, { takesNonFinite: true })
  return tree?.ok && tree.value.kind === 'record' ? tree.value : undefined
}

/** The parts of what a cue keeps; undefined where there is none, or none that is a clip. */
export const keptParts = (foreign: Foreign): KeptParts | undefined => {
  const kept = keptRecord(foreign)
  const inside = memberOf(kept, 'clip')
  const clip = kept && memberOf(kept, 'OTIO_SCHEMA') ? kept : inside
  if (!isOf(clip, 'Clip') || isNewer(clip)) return undefined
  return clip === kept
    ? { before: [], clip, after: [] }
    : { before: listOf(kept, 'before'), clip, after: listOf(kept, 'after') }
}

const isTimeline = (node: JsonNode): boolean =>
  ['Timeline', 'Stack', 'Track', 'SerializableCollection'].some((name) => isOf(node, name)) &&
  !isNewer(node)

/** The document that a reel keeps; undefined where there is none, or none that holds a list. */
export const keptDocument = (foreign: Foreign): JsonRecord | undefined => {
  const kept = keptRecord(foreign)
  return kept && isTimeline(kept) ? kept : undefined
}
