import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'

/** The last run of digits in a name, which numbers it within its sequence. */
const NUMBER = /(\d+)(?=\D*$)/u

/** A name taken apart: what stands before and after its number, and the number. */
export type NumberedName = {
  readonly before: string
  readonly after: string
  readonly number: number | undefined
}

export const numberedName = (name: string): NumberedName => {
  const stem = name.replace(/\.[^.]+$/u, '')
  const digits = NUMBER.exec(stem)
  if (!digits) return { before: stem, after: name.slice(stem.length), number: undefined }
  const [run] = digits
  return {
    before: stem.slice(0, digits.index),
    after: stem.slice(digits.index + run.length) + name.slice(stem.length),
    number: Number(run),
  }
}

const SHOWN = 5

/**
 * Picture files in the order of their numbers. Refuses a sequence with missing or doubled
 * numbers, naming the first of them, and several pictures that are not numbered.
 */
export const orderNumbered = <File extends { readonly name: string }>(
  files: readonly File[],
): Result<readonly File[]> => {
  const [only] = files
  if (files.length === 1 && only) return ok([only])
  const numbered: { readonly file: File; readonly number: number }[] = []
  for (const file of files) {
    const { number } = numberedName(file.name)
    if (number === undefined)
      return fail(
        problem(
          'malformed',
          `${file.name} has no number; the pictures of a sequence are numbered in their names.`,
          { file: file.name },
        ),
      )
    numbered.push({ file, number })
  }
  numbered.sort((a, b) => a.number - b.number)
  const missing: number[] = []
  for (const [index, { file, number }] of numbered.entries()) {
    const before = numbered[index - 1]?.number
    if (before === number)
      return fail(
        problem('conflict', `Number ${number} is there twice, as in ${file.name}; take one away.`, {
          file: file.name,
        }),
      )
    for (let n = (before ?? number - 1) + 1; n < number && missing.length <= SHOWN; n++)
      missing.push(n)
  }
  if (missing.length > 0) {
    const shown = missing.slice(0, SHOWN).join(', ')
    const more = missing.length > SHOWN ? ' and more' : ''
    return fail(
      problem('missing', `The sequence has no picture ${shown}${more}; add them or renumber.`),
    )
  }
  return ok(numbered.map(({ file }) => file))
}
