import type { Branded } from '../../base/brand.ts'
import { type JsonNode, type JsonRecord, memberOf, stringOf } from '../../base/json/jsonNode.ts'

/** What an OpenTimelineIO record says it is: `Clip.2` → Clip, 2. */
export type OtioSchema = { readonly name: string; readonly version: number }

/** Names that the registry of OpenTimelineIO (typeRegistry.cpp; `Sequence` from memory) keeps. */
const OLD_NAMES: Readonly<Record<string, string>> = {
  Filler: 'Gap',
  Sequence: 'Track',
  SerializeableCollection: 'SerializableCollection',
}

/** The latest versions that are read (CORE_VERSION_MAP.cpp, releases up to 0.18.1). */
const LATEST: Readonly<Record<string, number>> = {
  Timeline: 1,
  SerializableCollection: 1,
  Stack: 1,
  Track: 1,
  Clip: 2,
  Gap: 1,
  Transition: 1,
}

/** What a record says it is; undefined where it is none or says nothing. */
export const schemaOf = (node: JsonNode | undefined): OtioSchema | undefined => {
  const parts = /^(\w+)\.(\d{1,9})$/u.exec(stringOf(memberOf(node, 'OTIO_SCHEMA')) ?? '')
  if (!parts) return undefined
  const [, name = '', version = ''] = parts
  return { name: OLD_NAMES[name] ?? name, version: Number(version) }
}

/** A record that says what it is. */
export type OtioRecord = Branded<JsonRecord, 'OtioRecord'>

/** Whether a node is a record of this schema, of whatever version. */
export const isOf = (node: JsonNode | undefined, name: string): node is OtioRecord =>
  schemaOf(node)?.name === name

/** Whether a record is of a later version than is read; what is not known here never is. */
export const isNewer = (node: JsonNode): boolean => {
  const schema = schemaOf(node)
  return schema !== undefined && schema.version > (LATEST[schema.name] ?? Infinity)
}

export const nameOf = (node: JsonNode | undefined): string => stringOf(memberOf(node, 'name')) ?? ''

/** The items of a member that is a list; none where it is not. */
export const listOf = (node: JsonNode | undefined, name: string): readonly JsonNode[] => {
  const list = memberOf(node, name)
  return list?.kind === 'list' ? list.items : []
}

/** A record by its name, for a sentence to begin with. */
export const quoted = (node: JsonNode): string => {
  const name = nameOf(node)
  const kind = schemaOf(node)?.name.toLowerCase() ?? 'record'
  return name === '' ? `A ${kind} without a name` : `The ${kind} “${name}”`
}
