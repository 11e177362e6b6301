import { likelyCoding } from '../core/job/likelyCoding.ts'
import type { MediaFacts } from '../media/mediaFacts.ts'
import type { AppStore } from '../store/appStore.ts'
import type { CodingAnswer } from '../store/state.ts'

/** Puts questions to the person by way of the store, and waits for the answers. */
export type Questions = {
  readonly coding: (facts: MediaFacts) => Promise<CodingAnswer | undefined>
  readonly answerQuestion: (answer: CodingAnswer | undefined) => void
}

export const createQuestions = (store: AppStore): Questions => {
  let answerCoding: ((answer: CodingAnswer | undefined) => void) | undefined
  return {
    coding: (facts) => {
      const isVideo = facts.layout !== 'rgb'
      const guess = likelyCoding(facts.height, isVideo)
      const likely = {
        matrix: facts.matrix ?? guess.matrix,
        range: facts.range ?? guess.range,
        rate: facts.rate ?? guess.rate,
      }
      const asks = {
        asksMatrix: isVideo && facts.matrix === undefined,
        asksRange: facts.range === undefined,
        asksRate: facts.rate === undefined,
      }
      if (!Object.values(asks).some(Boolean)) return Promise.resolve(likely)
      const picture = `${facts.codec}, ${facts.width} × ${facts.height}, ${facts.depth} bit`
      store.setState({ question: { name: facts.name, picture, ...asks, likely } })
      return new Promise((resolve) => {
        answerCoding = resolve
      })
    },
    answerQuestion: (answer) => {
      store.setState({ question: undefined })
      answerCoding?.(answer)
      answerCoding = undefined
    },
  }
}
