import { isNull, type JsonNode, memberOf } from '../../base/json/jsonNode.ts'
import { isNewer, quoted, schemaOf } from './otioSchema.ts'
import type { Telling } from './otioTelling.ts'

/** Refuses what is of a later version than is read here; whether it was. */
export const refusesNewer = (node: JsonNode, { refuse }: Telling): boolean => {
  const schema = schemaOf(node)
  if (!schema || !isNewer(node)) return false
  refuse(
    'newer-version',
    `“${schema.name}.${schema.version}” is of a later OpenTimelineIO than is read here; write the list for release 0.18 or earlier.`,
    node,
  )
  return true
}

/** Fields that are read or written in, and what each must be where it is there at all. */
const FORMS: readonly (readonly [field: string, kind: 'list' | 'record'])[] = [
  ['children', 'list'],
  ['effects', 'list'],
  ['markers', 'list'],
  ['metadata', 'record'],
  ['media_references', 'record'],
]

/**
 * Whether a record is of a version that is read, with lists and records where they belong. It is
 * refused if not: what cannot be read there could not be kept either.
 */
export const isSound = (node: JsonNode, telling: Telling): boolean => {
  if (refusesNewer(node, telling)) return false
  const odd = FORMS.flatMap(([field, kind]) => {
    const value = memberOf(node, field)
    return value && !isNull(value) && value.kind !== kind ? [{ field, kind, value }] : []
  })
  for (const { field, kind, value } of odd)
    telling.refuse('malformed', `${quoted(node)}: its “${field}” must be a ${kind}.`, value)
  return odd.length === 0
}
