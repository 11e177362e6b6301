import type { DecisionList, ListTiming } from '../../src/core/formats/decisionList.ts'
import { readEdl } from '../../src/core/formats/edl/readEdl.ts'

/** A list that must be read. */
export const edlOf = (text: string, timing?: ListTiming): DecisionList => {
  const read = readEdl(text, timing)
  if (!read.ok) throw new Error(read.problems.map(({ says }) => says).join('\n'))
  return read.value
}

/** What is refused of a list: `line: sentence`. */
export const refusalsOf = (text: string, timing?: ListTiming): readonly string[] => {
  const read = readEdl(text, timing)
  if (read.ok) throw new Error('it was read')
  return read.problems.map(({ says, at }) => `${at?.line}: ${says}`)
}

/** What was not taken of a list: `line: sentence`. */
export const notTakenOf = ({ notTaken }: DecisionList): readonly string[] =>
  notTaken.map(({ says, at }) => `${at?.line}: ${says}`)

/** What a list said of a decision that a cue has no field for. */
export const foreignIn = (list: DecisionList, index = 0): Record<string, unknown> =>
  JSON.parse(list.decisions[index]?.foreign[0]?.text ?? '{}')
