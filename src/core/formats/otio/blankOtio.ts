import {
  type JsonNode,
  type JsonRecord,
  jsonList,
  jsonRecord,
  jsonString,
  jsonWord,
} from '../../base/json/jsonNode.ts'
import { DEFAULT_KEY } from './clipMedia.ts'

const NOTHING = jsonWord(null)
const EMPTY_LIST = jsonList([])
const EMPTY_RECORD = jsonRecord([])

/** Fields that everything with a place in time has (serialized-schema-only-fields.md). */
const itemFields = (): readonly (readonly [string, JsonNode])[] => [
  ['source_range', NOTHING],
  ['effects', EMPTY_LIST],
  ['markers', EMPTY_LIST],
  ['enabled', jsonWord(true)],
]

/** A clip that says nothing yet. */
export const BLANK_CLIP: JsonRecord = jsonRecord([
  ['OTIO_SCHEMA', jsonString('Clip.2')],
  ['name', jsonString('')],
  ['metadata', EMPTY_RECORD],
  ...itemFields(),
  ['media_references', EMPTY_RECORD],
  ['active_media_reference_key', jsonString(DEFAULT_KEY)],
])

/** A track of pictures whose items are taken out, as in what is kept of a list. */
export const BLANK_TRACK: JsonRecord = jsonRecord([
  ['OTIO_SCHEMA', jsonString('Track.1')],
  ['name', jsonString('V1')],
  ['metadata', EMPTY_RECORD],
  ...itemFields(),
  ['kind', jsonString('Video')],
])

/** A stack of these tracks. */
export const stackOf = (children: readonly JsonNode[]): JsonRecord =>
  jsonRecord([
    ['OTIO_SCHEMA', jsonString('Stack.1')],
    ['name', jsonString('tracks')],
    ['metadata', EMPTY_RECORD],
    ...itemFields(),
    ['children', jsonList(children)],
  ])

/** A timeline of this stack that says nothing of its own. */
export const timelineOf = (stack: JsonNode): JsonRecord =>
  jsonRecord([
    ['OTIO_SCHEMA', jsonString('Timeline.1')],
    ['name', jsonString('')],
    ['metadata', EMPTY_RECORD],
    ['global_start_time', NOTHING],
    ['tracks', stack],
  ])
