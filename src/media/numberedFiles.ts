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

/** A file name's extension; digits after a point are a number, not an extension. */
const EXTENSION = /\.[^.]*[^.\d][^.]*$/u

export const numberedName = (name: string): NumberedName => {
  const stem = name.replace(EXTENSION, '')
  const digits = NUMBER.exec(stem)
  if (!digits) return { before: stem, after: name.slice(stem.length), number: undefined }
  const [run] = digits
  return {
    before: stem.slice(0, digits.index),
    after: stem.slice(digits.index + run.length) + name.slice(stem.length),
    number: Number(run),
  }
}

/** What stands in a sequence's name for the numbers of its pictures. */
const ANY_NUMBER = '####'

/** A name for a whole sequence, such as `reel_####.png`, from that of one of its pictures. */
export const sequenceName = (name: string): string => {
  const { before, after } = numberedName(name)
  return `${before}${ANY_NUMBER}${after}`
}

/** What the pictures of a sequence have in common, from its name; undefined of any other name. */
export const sequenceParts = (name: string): Pick<NumberedName, 'before' | 'after'> | undefined => {
  const at = name.lastIndexOf(ANY_NUMBER)
  return at < 0
    ? undefined
    : { before: name.slice(0, at), after: name.slice(at + ANY_NUMBER.length) }
}

const SHOWN = 5

const several = (names: readonly string[]): Result<never> =>
  fail(
    problem(
      'conflict',
      `${names.join(' and ')} belong to different sequences; give the pictures of one.`,
      { file: names[0] ?? '' },
    ),
  )

/** Numbers that are not there in a sorted list, at most one more than are shown. */
const gapsIn = (numbers: readonly number[]): readonly number[] => {
  const missing: number[] = []
  for (const [index, number] of numbers.entries())
    for (let n = (numbers[index - 1] ?? number - 1) + 1; n < number; n++) {
      if (missing.length > SHOWN) return missing
      missing.push(n)
    }
  return missing
}

/**
 * Picture files in the order of the last number in their names. Refuses names of different
 * sequences, missing or doubled numbers (naming the first of them), and several pictures that
 * are not numbered.
 */
export const orderNumbered = <File extends { readonly name: string }>(
  files: readonly File[],
): Result<readonly File[]> => {
  const [only] = files
  if (files.length === 1 && only) return ok([only])
  const numbered: { readonly file: File; readonly number: number }[] = []
  let shared: { readonly name: string; readonly before: string; readonly after: string } | undefined
  for (const file of files) {
    const { name } = file
    const { before, after, number } = numberedName(name)
    if (number === undefined || !Number.isSafeInteger(number))
      return fail(
        problem(
          'malformed',
          `${name} has no number that can be counted by; the pictures of a sequence are numbered in their names.`,
          { file: name },
        ),
      )
    shared ??= { name, before, after }
    if (before !== shared.before || after !== shared.after) return several([shared.name, name])
    numbered.push({ file, number })
  }
  numbered.sort((a, b) => a.number - b.number)
  const doubled = numbered.find(({ number }, index) => numbered[index + 1]?.number === number)
  if (doubled)
    return fail(
      problem(
        'conflict',
        `Number ${doubled.number} is there twice, as in ${doubled.file.name}; take one away.`,
        { file: doubled.file.name },
      ),
    )
  const missing = gapsIn(numbered.map(({ number }) => number))
  if (missing.length === 0) return ok(numbered.map(({ file }) => file))
  const shown = missing.slice(0, SHOWN).join(', ')
  const more = missing.length > SHOWN ? ' and more' : ''
  return fail(
    problem('missing', `The sequence has no picture ${shown}${more}; add them or renumber.`),
  )
}
