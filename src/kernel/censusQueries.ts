import type { CensusData } from '../core/census/censusData.ts'
import type { CensusQuestion } from '../core/census/censusQuestion.ts'
import { isExactShape } from '../core/census/censusShape.ts'
import type { CensusQueries } from '../core/census/censusVerdict.ts'
import { createOutsideCounter } from '../core/census/countOutside.ts'
import { createEndsFinder } from '../core/census/findEnds.ts'
import { ENDS_BYTES, endsOf, writeQuestion, writtenQuestionBytes } from './censusQuestions.ts'
import { applySettings } from './kernelModule.ts'
import type { KernelState } from './kernelState.ts'

/** Colours that bounds may leave open before the reference is asked instead. */
const MOST_OPEN = 65_536

/** Queries of censuses that share one kernel's memory: the census last asked is laid there. */
export const censusQueries = ({ module, memory, uses }: KernelState) => {
  let laid: { readonly census: CensusData; readonly top: number; readonly use: number } | undefined
  let asked: CensusQuestion | undefined
  const places = { curvesAt: 0, weightsAt: 0, limitsAt: 0, openKeys: 0, endsAt: 0 }

  const lay = (census: CensusData): number => {
    const space = memory()
    const censusLevels = space.take(census.levels.byteLength)
    const censusCounts = space.take(census.counts.byteLength)
    const boxes = census.boxes.map((level) => ({
      level,
      boxesAt: space.take(level.boxes.byteLength),
      pixelsAt: space.take(level.pixels.byteLength),
    }))
    const censusBoxes = space.take(boxes.length * 12)
    places.curvesAt = space.take(writtenQuestionBytes.curves)
    places.weightsAt = space.take(writtenQuestionBytes.weights)
    places.limitsAt = space.take(writtenQuestionBytes.limits)
    places.openKeys = space.take(MOST_OPEN * 4)
    places.endsAt = space.take(ENDS_BYTES)
    const buffer = space.settle()
    new Float32Array(buffer, censusLevels, census.levels.length).set(census.levels)
    new Uint32Array(buffer, censusCounts, census.counts.length).set(census.counts)
    const table = new Uint32Array(buffer, censusBoxes, boxes.length * 3)
    for (const [i, { level, boxesAt, pixelsAt }] of boxes.entries()) {
      new Float32Array(buffer, boxesAt, level.boxes.length).set(level.boxes)
      new Float64Array(buffer, pixelsAt, level.pixels.length).set(level.pixels)
      table.set([boxesAt, pixelsAt, level.pixels.length], i * 3)
    }
    applySettings(module, {
      ...places,
      censusLevels,
      censusCounts,
      censusKeys: census.keys.length,
      isBoxed: !isExactShape(census.shape),
      censusBoxes,
      openLimit: MOST_OPEN,
    })
    return boxes.length - 1
  }
  /** Lays a question before the kernel, and its census where that is needed; tells the top level. */
  const ask = (census: CensusData, question: CensusQuestion): number => {
    if (laid?.census !== census || laid.use !== uses()) {
      const top = lay(census)
      laid = { census, top, use: uses() }
      asked = undefined
    }
    if (asked !== question) {
      writeQuestion(module.memory.buffer, places, question)
      applySettings(module, { hasPeaks: question.hasComposite })
      asked = question
    }
    return laid.top
  }
  const openPlaces = (count: number) => new Int32Array(module.memory.buffer, places.openKeys, count)

  /** The queries of a census. */
  return (census: CensusData): CensusQueries => ({
    countOutside: (question) => {
      const open = module.countOutside(ask(census, question))
      if (open > MOST_OPEN) return createOutsideCounter(census)(question)
      return {
        atLeast: module.pixelsOutside(),
        atMost: module.pixelsNotInside(),
        open: openPlaces(open),
      }
    },
    findEnds: (question) => {
      const open = module.findEnds(ask(census, question))
      if (open > MOST_OPEN) return createEndsFinder(census)(question)
      return { ...endsOf(module.memory.buffer, places.endsAt), open: openPlaces(open) }
    },
  })
}
