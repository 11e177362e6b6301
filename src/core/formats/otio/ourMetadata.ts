import {
  isNull,
  type JsonNode,
  type JsonRecord,
  jsonRecord,
  jsonWord,
  memberOf,
  withMember,
} from '../../base/json/jsonNode.ts'
import { jsonOf } from '../../base/json/plainJson.ts'
import { OWN } from './ownMetadata.ts'

/** A member that is a record, or an empty one. */
export const recordOf = (record: JsonRecord, name: string): JsonRecord => {
  const inside = memberOf(record, name)
  return inside?.kind === 'record' ? inside : jsonRecord([])
}

/** The record with these set in our namespace of its metadata; what else is there stays. */
export const withOwn = (
  record: JsonRecord,
  values: Readonly<Record<string, unknown>>,
): JsonRecord => {
  const metadata = recordOf(record, 'metadata')
  const own = Object.entries(values).reduce(
    (all, [name, value]) => withMember(all, name, jsonOf(value)),
    recordOf(metadata, OWN),
  )
  return withMember(record, 'metadata', withMember(metadata, OWN, own))
}

/** The record with nodes added to a list in our namespace; the same where there are none. */
export const withOwnNodes = (
  record: JsonRecord,
  name: string,
  nodes: readonly JsonNode[],
): JsonRecord => {
  if (nodes.length === 0) return record
  const metadata = recordOf(record, 'metadata')
  const own = recordOf(metadata, OWN)
  const there = memberOf(own, name)
  const items = there?.kind === 'list' ? there.items : []
  const list: JsonNode = { kind: 'list', items: [...items, ...nodes], at: 0 }
  return withMember(record, 'metadata', withMember(metadata, OWN, withMember(own, name, list)))
}

/**
 * The record with `value` for a field of its own. What another program had there is kept in our
 * namespace under `replaced`, since it told of its own media and times.
 */
export const withReplacing = (
  record: JsonRecord,
  name: string,
  value: JsonNode | undefined,
): JsonRecord => {
  const before = memberOf(record, name)
  const put = withMember(record, name, value ?? jsonWord(null))
  if (!before || isNull(before)) return put
  const metadata = recordOf(put, 'metadata')
  const own = recordOf(metadata, OWN)
  const replaced = withMember(recordOf(own, 'replaced'), name, before)
  const kept = withMember(metadata, OWN, withMember(own, 'replaced', replaced))
  return withMember(put, 'metadata', kept)
}

/** Half of a character that takes two units of UTF-16. */
const LONE_SURROGATE = /[\ud800-\udfff]/gu

/**
 * Plain data with U+FFFD for each half of a character in its texts, which strict readers of JSON
 * refuse; the very same where there is none.
 */
export const withWholeCharacters = <T>(value: T): T => {
  if (typeof value === 'string') return value.replace(LONE_SURROGATE, '\ufffd') as T
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value)
  const whole = entries.map(([, each]) => withWholeCharacters(each))
  if (whole.every((each, index) => Object.is(each, entries[index]?.[1]))) return value
  return (
    Array.isArray(value)
      ? whole
      : Object.fromEntries(entries.map(([name], index) => [name, whole[index]]))
  ) as T
}
