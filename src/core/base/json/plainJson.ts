import type { JsonNode } from './jsonNode.ts'
import { jsonList, jsonRecord, jsonString, jsonWord, numberOf } from './jsonNode.ts'

/** A double as JSON spells it, with a point or an exponent, so that a reader takes it for one. */
export const jsonNumber = (value: number): JsonNode => {
  const shortest = Object.is(value, -0) ? '-0' : String(value)
  return { kind: 'number', text: /^-?\d+$/u.test(shortest) ? `${shortest}.0` : shortest, at: 0 }
}

/**
 * Plain data → its tree, whole numbers spelt without a point (but −0 with one). What is undefined is
 * left out. Numbers must be finite.
 */
export const jsonOf = (value: unknown): JsonNode => {
  if (typeof value === 'number')
    return Number.isInteger(value) && !Object.is(value, -0)
      ? { kind: 'number', text: String(value), at: 0 }
      : jsonNumber(value)
  if (typeof value === 'string') return jsonString(value)
  if (Array.isArray(value)) return jsonList(value.map(jsonOf))
  if (typeof value === 'object' && value !== null)
    return jsonRecord(
      Object.entries(value).flatMap(([name, each]) =>
        each === undefined ? [] : [[name, jsonOf(each)] as const],
      ),
    )
  return jsonWord(typeof value === 'boolean' ? value : null)
}

/** A tree → plain data as `JSON.parse` gives it; `__proto__` is a name like any other. */
export const plainJson = (node: JsonNode): unknown => {
  switch (node.kind) {
    case 'record':
      return Object.fromEntries(node.members.map(({ name, value }) => [name, plainJson(value)]))
    case 'list':
      return node.items.map(plainJson)
    case 'number':
      return numberOf(node)
    default:
      return node.value
  }
}
