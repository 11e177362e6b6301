import type { JsonNode } from '../../base/json/jsonNode.ts'
import { linePlaces } from '../../base/json/linePlaces.ts'
import { type Problem, type ProblemCode, problem } from '../../base/problem.ts'

/** What is gathered while a list is read: why it is refused, and what is not taken from it. */
export type Telling = {
  /** Something that makes the list as a whole unreadable. */
  readonly refuse: (code: ProblemCode, says: string, at: JsonNode) => void
  /** Something that is not taken though the list is read. */
  readonly tell: (code: ProblemCode, says: string, at: JsonNode) => void
  readonly lineOf: (node: JsonNode) => number
  readonly refused: readonly Problem[]
  readonly told: () => readonly Problem[]
}

/** Told one by one up to here; of more, how many they are. */
const MOST_TOLD = 1000
const MOST_REFUSED = 100

export const telling = (text: string): Telling => {
  const placeOf = linePlaces(text)
  const refused: Problem[] = []
  const told: Problem[] = []
  let more = 0
  let firstMore: JsonNode | undefined
  return {
    refuse: (code, says, { at }) => {
      if (refused.length < MOST_REFUSED) refused.push(problem(code, says, placeOf(at)))
    },
    tell: (code, says, node) => {
      if (told.length < MOST_TOLD) told.push(problem(code, says, placeOf(node.at)))
      else {
        more++
        firstMore ??= node
      }
    },
    lineOf: ({ at }) => placeOf(at).line,
    refused,
    told: () =>
      firstMore === undefined
        ? told
        : [
            ...told,
            problem(
              'too-large',
              `From here on ${more} more things of this kind are not taken; they are too many to name.`,
              placeOf(firstMore.at),
            ),
          ],
  }
}
