import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { type Rate, sameRate } from '../time/rate.ts'
import type { DecisionList } from './decisionList.ts'

/** One file of several that make a list together. */
export type ListFile = { readonly name: string; readonly list: DecisionList }

const withoutExtension = (name: string): string => name.replace(/(?<=.)\.[^.]+$/u, '')

/** Names in order, numbers in them by their value: `part 2` comes before `part 10`. */
const compareNames = (a: string, b: string): number => {
  const [inA, inB] = [a, b].map((name) => name.split(/(\d+)/u))
  for (const [i, part] of (inA ?? []).entries()) {
    const other = inB?.[i] ?? ''
    if (part === other) continue
    const byValue = i % 2 === 1 ? Number(part) - Number(other) : 0
    return byValue || (part < other ? -1 : 1)
  }
  return (inA?.length ?? 0) - (inB?.length ?? 0)
}

const isSameRate = (a: Rate | undefined, b: Rate | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && sameRate(a, b))

/**
 * Several files as one list, in the order of their names: a file a cue, or a list in parts. Refused
 * where they differ in format or rate. A decision without a name is called as its file. What is not
 * taken is told with the file it is of; what one file says as a whole is told and not kept.
 */
export const joinLists = (files: readonly ListFile[]): Result<DecisionList> => {
  const sorted = files.toSorted((a, b) => compareNames(a.name, b.name))
  const [first] = sorted
  if (!first) return fail(problem('missing', 'No list was given; choose one.'))
  const { format, rate, isDropFrame } = first.list
  const other = sorted.find(
    ({ list }) =>
      list.format !== format || !isSameRate(list.rate, rate) || list.isDropFrame !== isDropFrame,
  )
  if (other)
    return fail(
      problem(
        'conflict',
        `${first.name} and ${other.name} are of different formats or rates; import them one after another.`,
      ),
    )
  const notTaken = sorted.flatMap(({ name, list }) => [
    ...list.notTaken.map((each) => ({ ...each, says: `${name}: ${each.says}` })),
    ...(list.foreign.length === 0
      ? []
      : [
          problem(
            'conflict',
            `${name}: what it says as a whole is not kept, being one of several.`,
          ),
        ]),
  ])
  return ok({
    format,
    title: '',
    rate,
    ...(isDropFrame === undefined ? {} : { isDropFrame }),
    decisions: sorted.flatMap(({ name, list }) =>
      list.decisions.map((each) => ({ ...each, name: each.name || withoutExtension(name) })),
    ),
    foreign: [],
    notTaken,
  })
}
