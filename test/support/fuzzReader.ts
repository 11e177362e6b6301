import { expect } from 'vitest'
import type { Result } from '../../src/core/base/result.ts'

/** Pseudo-random whole numbers below `below`: mulberry32, the same for the same seed. */
export type Chance = (below: number) => number

export const chanceFrom = (seed: number): Chance => {
  let state = seed >>> 0
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 2 ** 32) * below)
  }
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

/** What readers of numbers, names and structure stumble over. */
const ODDITIES = [
  ...['', ' ', '\n', '\r\n', '\t', '\0', '-', '.', '"', "'", '<', '>', '&', '{', '}', '[', ']'],
  ...[
    '-0',
    '1e999',
    '-1e999',
    '9007199254740993',
    '1e-400',
    'NaN',
    'Infinity',
    '0x10',
    '99999999999',
  ],
  ...['é', '\ufeff', '\u2028', '🎞', '__proto__', 'constructor', '00:00:00:00', '24:00:00:00'],
].map(bytesOf)

const splice = (bytes: Uint8Array, at: number, taken: number, put: Uint8Array): Uint8Array => {
  const out = new Uint8Array(bytes.length - taken + put.length)
  out.set(bytes.subarray(0, at))
  out.set(put, at)
  out.set(bytes.subarray(at + taken), at + put.length)
  return out
}

/** One small damage: a byte changed, a stretch lost, doubled, moved or swapped for another file's. */
const damage = (bytes: Uint8Array, others: readonly Uint8Array[], chance: Chance): Uint8Array => {
  const at = chance(bytes.length + 1)
  const length = Math.min(bytes.length - at, 1 + chance(chance(4) === 0 ? 400 : 12))
  const stretch = bytes.subarray(at, at + length)
  switch (chance(7)) {
    case 0:
      return splice(bytes, at, Math.min(1, bytes.length - at), Uint8Array.of(chance(256)))
    case 1:
      return splice(bytes, at, length, new Uint8Array())
    case 2:
      return splice(bytes, at, 0, stretch)
    case 3:
      return splice(bytes, chance(bytes.length + 1), 0, stretch)
    case 4:
      return bytes.subarray(0, at)
    case 5: {
      const other = others[chance(others.length)] ?? bytes
      const from = chance(other.length + 1)
      return splice(bytes, at, length, other.subarray(from, from + 1 + chance(200)))
    }
    default:
      return splice(bytes, at, chance(2) * length, ODDITIES[chance(ODDITIES.length)] ?? stretch)
  }
}

/** How a reader is fuzzed. */
export type Fuzz<Input> = {
  /** Whole files, the smaller the better, that runs begin from. */
  readonly seeds: readonly Uint8Array[]
  /** A file made up from the format's own words, in place of a damaged one every fourth run. */
  readonly makeUp: (chance: Chance) => Uint8Array
  readonly toInput: (bytes: Uint8Array) => Input
  readonly read: (input: Input) => Result<unknown> | Promise<Result<unknown>>
  readonly runs?: number
  readonly seed?: number
  /** Longest time of one run, in ms: far above what a small file takes, below what a hang does. */
  readonly longest?: number
}

const MOST_HELD = 400 * 2 ** 20

/**
 * Reads `runs` files, most of them real ones with one to four small damages: none may throw, take
 * too long or leave memory held, and each refusal must say a sentence and name a line or a byte.
 * Returns how many were read and how many refused, so that a test can see that both happen.
 */
export const fuzzReader = async <Input>({
  seeds,
  makeUp,
  toInput,
  read,
  runs = 20_000,
  seed = 1,
  longest = 2000,
}: Fuzz<Input>): Promise<{ readonly read: number; readonly refused: number }> => {
  const chance = chanceFrom(seed)
  const heldBefore = process.memoryUsage().heapUsed
  let refused = 0
  for (let run = 0; run < runs; run++) {
    let bytes = run % 4 === 3 ? makeUp(chance) : (seeds[chance(seeds.length)] ?? new Uint8Array())
    for (let left = run % 4 === 3 ? chance(2) : 1 + chance(4); left > 0; left--)
      bytes = damage(bytes, seeds, chance)
    const input = toInput(bytes)
    const begun = performance.now()
    const told = () => `run ${run}: ${new TextDecoder().decode(bytes).slice(0, 2000)}`
    let result: Result<unknown>
    try {
      result = await read(input)
    } catch (error) {
      throw new Error(`The reader threw at ${told()}`, { cause: error })
    }
    if (performance.now() - begun > longest) expect.fail(`Took over ${longest} ms: ${told()}`)
    if (result.ok) continue
    refused++
    for (const { says, at } of result.problems) {
      if (!/\S.*[.!?]$/su.test(says)) expect.fail(`No sentence: “${says}” at ${told()}`)
      if (at?.line === undefined && at?.byte === undefined)
        expect.fail(`Names no line or byte: “${says}” at ${told()}`)
    }
  }
  expect(process.memoryUsage().heapUsed - heldBefore).toBeLessThan(MOST_HELD)
  return { read: runs - refused, refused }
}

/** Text as the fuzzer takes it, and bytes as text, however broken. */
export const textInput = {
  seedsOf: (texts: readonly string[]): readonly Uint8Array[] => texts.map(bytesOf),
  toInput: (bytes: Uint8Array): string => new TextDecoder().decode(bytes),
}
