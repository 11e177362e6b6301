/** A name of a record and its value; `at` is where the name begins. */
export type JsonMember = { readonly name: string; readonly value: JsonNode; readonly at: number }

export type JsonRecord = {
  readonly kind: 'record'
  /** In the order of the text; no name is there twice. */
  readonly members: readonly JsonMember[]
  readonly at: number
}

export type JsonList = {
  readonly kind: 'list'
  readonly items: readonly JsonNode[]
  readonly at: number
}

export type JsonScalar =
  | { readonly kind: 'string'; readonly value: string; readonly at: number }
  /** As it is spelt, so that an integer past 2^53, `-0` and `1.0` stay what they are. */
  | { readonly kind: 'number'; readonly text: string; readonly at: number }
  | { readonly kind: 'word'; readonly value: boolean | null; readonly at: number }

/**
 * A JSON value that remembers order, spelling of numbers and where it stood: `at` counts UTF-16
 * units of the text from 0, and is 0 for what was never in one.
 */
export type JsonNode = JsonRecord | JsonList | JsonScalar

export const jsonRecord = (members: readonly (readonly [string, JsonNode])[]): JsonRecord => ({
  kind: 'record',
  members: members.map(([name, value]) => ({ name, value, at: 0 })),
  at: 0,
})

export const jsonList = (items: readonly JsonNode[]): JsonList => ({ kind: 'list', items, at: 0 })

export const jsonString = (value: string): JsonNode => ({ kind: 'string', value, at: 0 })

export const jsonWord = (value: boolean | null): JsonNode => ({ kind: 'word', value, at: 0 })

/** The value of a record's member; undefined where it has none, or where this is no record. */
export const memberOf = (node: JsonNode | undefined, name: string): JsonNode | undefined =>
  node?.kind === 'record' ? node.members.find((member) => member.name === name)?.value : undefined

/** The value at the end of a path of names. */
export const memberAt = (
  node: JsonNode | undefined,
  ...names: readonly string[]
): JsonNode | undefined => names.reduce<JsonNode | undefined>(memberOf, node)

/** What a string holds; undefined where this is none. */
export const stringOf = (node: JsonNode | undefined): string | undefined =>
  node?.kind === 'string' ? node.value : undefined

/** The double nearest to a number; undefined where this is none. */
export const numberOf = (node: JsonNode | undefined): number | undefined => {
  if (node?.kind !== 'number') return undefined
  if (node.text === 'Inf') return Infinity
  return node.text === '-Inf' ? -Infinity : Number(node.text)
}

export const isNull = (node: JsonNode | undefined): boolean =>
  node === undefined || (node.kind === 'word' && node.value === null)

/** The record with a member set where it stands, or put last; undefined takes it out. */
export const withMember = (
  record: JsonRecord,
  name: string,
  value: JsonNode | undefined,
): JsonRecord => {
  const index = record.members.findIndex((member) => member.name === name)
  if (value === undefined)
    return index < 0 ? record : { ...record, members: record.members.toSpliced(index, 1) }
  const member = { name, value, at: 0 }
  const members = index < 0 ? [...record.members, member] : record.members.with(index, member)
  return { ...record, members }
}
