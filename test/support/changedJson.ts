import type { Chance } from './fuzzReader.ts'

const ODDITIES = [
  ...[null, -1, 0, 0.5, 1e9, 1e300, 2 ** 53, '', 'x', '\ud83c', [], {}, true],
  ...[[1, 2, 3], 'cue-1', 'reel-a', 500, 'Clip.9', 'Stack.1', 'Gap.1', 'Track.1'],
]

const recordsIn = (node: unknown): readonly Record<string, unknown>[] =>
  typeof node === 'object' && node !== null
    ? [node as Record<string, unknown>, ...Object.values(node).flatMap(recordsIn)]
    : []

/**
 * A JSON text like `text` whose records have up to three fields or items changed: another value
 * put there, another one of the text put there, or the field taken out.
 */
export const changedJson = (text: string, chance: Chance): Uint8Array => {
  const file = JSON.parse(text)
  for (let left = chance(4); left > 0; left--) {
    const records = recordsIn(file)
    const record = records[chance(records.length)] ?? {}
    const names = Object.keys(record)
    const name = names[chance(names.length)] ?? 'extra'
    const kind = chance(6)
    if (kind === 0) delete record[name]
    else if (kind === 1) record[name] = structuredClone(records[chance(records.length)])
    else if (kind === 2) record.extra = structuredClone(ODDITIES[chance(ODDITIES.length)])
    else record[name] = structuredClone(ODDITIES[chance(ODDITIES.length)])
  }
  return new TextEncoder().encode(JSON.stringify(file, undefined, chance(3)))
}
