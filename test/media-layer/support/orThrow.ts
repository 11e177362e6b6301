import type { Result } from '../../../src/core/base/result.ts'

/** A result's value; throws what is wrong. */
export const orThrow = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ says }) => says).join(' '))
  return result.value
}
