import type { Problem } from './problem.ts'

/** The outcome of anything that can fail on bad input: a value, or every problem found. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly [Problem, ...Problem[]] }

export const ok = <T>(value: T): Result<T> => ({ ok: true, value })

export const fail = (first: Problem, ...rest: Problem[]): Result<never> => ({
  ok: false,
  problems: [first, ...rest],
})

/** `fail` for a collected list; `ok` when the list is empty. */
export const resultOf = <T>(value: T, problems: readonly Problem[]): Result<T> => {
  const [first, ...rest] = problems
  return first === undefined ? ok(value) : fail(first, ...rest)
}
