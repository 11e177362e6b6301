import { problem } from './problem.ts'
import { fail, ok, type Result } from './result.ts'

/** What JSON can hold. */
export type Json =
  | null
  | boolean
  | number
  | string
  | readonly Json[]
  | { readonly [name: string]: Json }

/** With the `u` flag a surrogate matches only where it has no partner. */
const LONE_SURROGATE = /[\ud800-\udfff]/u

/** The first value inside that has no canonical form, as the path to it. */
const misfit = (value: Json, path: string): string | undefined => {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : path
  if (typeof value === 'string') return LONE_SURROGATE.test(value) ? path : undefined
  if (typeof value !== 'object' || value === null) return undefined
  for (const [name, inside] of Object.entries(value)) {
    const at = path === '' ? name : `${path}.${name}`
    if (LONE_SURROGATE.test(name)) return at
    const found = misfit(inside, at)
    if (found !== undefined) return found
  }
  return undefined
}

const isList = (value: Json): value is readonly Json[] => Array.isArray(value)

const text = (value: Json): string => {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  if (isList(value)) return `[${value.map(text).join(',')}]`
  // Names compare by UTF-16 code units (RFC 8785 §3.2.3), which is what sort() does by itself.
  const members = Object.keys(value)
    .sort()
    .map((name) => `${JSON.stringify(name)}:${text(value[name] as Json)}`)
  return `{${members.join(',')}}`
}

/**
 * JSON in the one form of RFC 8785, so that equal values are equal texts and can be hashed: no
 * white space, names sorted by UTF-16 code units, numbers and strings as ECMAScript writes them.
 * Refuses what has no such form (§3.1, §3.2.2.2–3): numbers that are not finite, lone surrogates.
 */
export const canonicalJson = (value: Json): Result<string> => {
  const at = misfit(value, '')
  return at === undefined
    ? ok(text(value))
    : fail(
        problem(
          'out-of-range',
          `“${at}” holds a number that is not finite or half a character; mend it.`,
          { field: at },
        ),
      )
}
