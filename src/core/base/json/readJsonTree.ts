import { problem } from '../problem.ts'
import { fail, ok, type Result } from '../result.ts'
import type { JsonMember, JsonNode } from './jsonNode.ts'
import { linePlaces } from './linePlaces.ts'
import { type JsonRefusal, type JsonTaken, scanJson } from './scanJson.ts'

const DEEPEST = 64
const LARGEST = 128 * 2 ** 20
const MOST_VALUES = 8_000_000

/** Records with more names than this keep them in a set, to find one that is there twice. */
const FEW_NAMES = 16

type Open = {
  readonly at: number
  readonly members: JsonMember[] | undefined
  readonly items: JsonNode[]
  /** The name whose value comes next, and where it stands. */
  name: string
  nameAt: number
  names: Set<string> | undefined
}

/** Spelt with its quotes and without a fault, as `scanJson` gives it → what it holds. */
export const speltString = (spelt: string): string =>
  spelt.includes('\\') ? (JSON.parse(spelt) as string) : spelt.slice(1, -1)

const isTaken = (record: Open, name: string): boolean => {
  const { members = [] } = record
  if (members.length < FEW_NAMES) return members.some((member) => member.name === name)
  record.names ??= new Set(members.map((member) => member.name))
  return record.names.has(name)
}

const scalarNode = (spelt: string, at: number): JsonNode => {
  if (spelt.startsWith('"')) return { kind: 'string', value: speltString(spelt), at }
  if (spelt === 'null') return { kind: 'word', value: null, at }
  if (spelt === 'true' || spelt === 'false') return { kind: 'word', value: spelt === 'true', at }
  return { kind: 'number', text: spelt, at }
}

/**
 * A JSON text → its tree. Refuses more than 128 MB, more than eight million values and a depth
 * past 64. Also a record with a name twice: most readers would take one of the two and lose the other
 * (RFC 8259 §4). Tells line and column of what is wrong.
 */
export const readJsonTree = (text: string, taken: JsonTaken = {}): Result<JsonNode> => {
  if (text.length > LARGEST)
    return fail(
      problem('too-large', 'A JSON file of more than 128 MB is not read; split it.', { line: 1 }),
    )
  const open: Open[] = []
  let root: JsonNode | undefined
  let count = 0
  const put = (node: JsonNode): void => {
    const inside = open.at(-1)
    if (!inside) root = node
    else if (inside.members)
      inside.members.push({ name: inside.name, value: node, at: inside.nameAt })
    else inside.items.push(node)
  }
  const counted = (): JsonRefusal | undefined =>
    ++count > MOST_VALUES
      ? { code: 'too-large', says: `the file passes ${MOST_VALUES} values` }
      : undefined
  const fault = scanJson(
    text,
    {
      open: (isRecord, at) => {
        const members = isRecord ? [] : undefined
        open.push({ at, members, items: [], name: '', nameAt: 0, names: undefined })
        return counted()
      },
      close: () => {
        const closed = open.pop()
        if (!closed) return
        const { at, members, items } = closed
        put(members ? { kind: 'record', members, at } : { kind: 'list', items, at })
      },
      name: (spelt, at) => {
        const record = open.at(-1)
        if (!record) return undefined
        const name = speltString(spelt)
        if (isTaken(record, name))
          return { code: 'conflict', says: `the name ${shortened(spelt)} is there a second time` }
        record.names?.add(name)
        record.name = name
        record.nameAt = at
        return undefined
      },
      scalar: (spelt, at) => {
        put(scalarNode(spelt, at))
        return counted()
      },
    },
    { deepest: DEEPEST, ...taken },
  )
  if (fault || !root) {
    const { line, column } = linePlaces(text)(fault?.at ?? 0)
    const says = fault?.says ?? 'there is nothing in it'
    return fail(
      problem(
        fault?.code ?? 'malformed',
        `This JSON cannot be read: in line ${line}, column ${column}, ${says}. Mend the file, or get it again.`,
        { line, column },
      ),
    )
  }
  return ok(root)
}

const shortened = (spelt: string): string => (spelt.length > 40 ? `${spelt.slice(0, 39)}…` : spelt)
