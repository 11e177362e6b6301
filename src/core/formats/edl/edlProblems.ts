import { type Problem, type ProblemCode, problem } from '../../base/problem.ts'

/** At most so many are told one by one; of the rest, how many there are. */
const MOST_TOLD = 1000

/** Problems of a list, as they are found. */
export type EdlProblems = {
  readonly add: (code: ProblemCode, says: string, line: number) => void
  /** All of them; past the first thousand a last one says how many more there are. */
  readonly told: () => readonly Problem[]
}

export const createEdlProblems = (): EdlProblems => {
  const first: Problem[] = []
  let more = 0
  let lineOfMore = 0
  return {
    add: (code, says, line) => {
      if (first.length < MOST_TOLD) {
        first.push(problem(code, says, { line }))
        return
      }
      if (more === 0) lineOfMore = line
      more++
    },
    told: () =>
      more === 0
        ? first
        : [
            ...first,
            problem('too-large', `There are ${more} more like these.`, { line: lineOfMore }),
          ],
  }
}
