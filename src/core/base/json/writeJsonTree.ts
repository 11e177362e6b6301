import type { JsonNode } from './jsonNode.ts'

/** What stands between opening and closing, each on its own line where there is an indent. */
const block = (
  open: string,
  close: string,
  inside: readonly string[],
  step: string,
  indent: string,
): string => {
  if (inside.length === 0) return `${open}${close}`
  if (step === '') return `${open}${inside.join(',')}${close}`
  const line = `\n${indent}${step}`
  return `${open}${line}${inside.join(`,${line}`)}\n${indent}${close}`
}

const written = (node: JsonNode, step: string, indent: string): string => {
  const deeper = indent + step
  switch (node.kind) {
    case 'record': {
      const colon = step === '' ? ':' : ': '
      const members = node.members.map(
        ({ name, value }) => `${JSON.stringify(name)}${colon}${written(value, step, deeper)}`,
      )
      return block('{', '}', members, step, indent)
    }
    case 'list': {
      const items = node.items.map((item) => written(item, step, deeper))
      if (step !== '' && node.items.every(({ kind }) => kind === 'number'))
        return `[${items.join(', ')}]`
      return block('[', ']', items, step, indent)
    }
    case 'string':
      return JSON.stringify(node.value)
    case 'number':
      return node.text
    case 'word':
      return String(node.value)
  }
}

/**
 * A tree as JSON text: with two spaces a level, laid out as `JSON.stringify` does but for lists of
 * numbers, which stay in one line; or all in one line without any space (`indent` 0). Numbers as they are spelt; half a character as its escape.
 */
export const writeJsonTree = (node: JsonNode, indent: 0 | 2 = 2): string =>
  written(node, ' '.repeat(indent), '')
