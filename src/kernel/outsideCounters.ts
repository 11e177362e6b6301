import type { CensusData } from '../core/census/censusData.ts'
import { isExactShape } from '../core/census/censusShape.ts'
import { createOutsideCounter, type OutsideCounter } from '../core/census/countOutside.ts'
import { applySettings } from './kernelModule.ts'
import type { KernelState } from './kernelState.ts'

/** Colours that bounds may leave open before the reference is asked instead. */
const MOST_OPEN = 65_536

/** Counters of pixels outside that share one kernel's memory: the census last asked is laid there. */
export const outsideCounters = ({ module, memory, uses }: KernelState) => {
  let laid: { readonly census: CensusData; readonly top: number; readonly use: number } | undefined
  const places = { curvesAt: 0, weightsAt: 0, limitsAt: 0, openKeys: 0 }

  const lay = (census: CensusData): number => {
    const space = memory()
    const arrays = [census.levels, census.counts] as const
    const [censusLevels, censusCounts] = arrays.map(({ byteLength }) => space.take(byteLength))
    const boxes = census.boxes.map((level) => ({
      level,
      boxesAt: space.take(level.boxes.byteLength),
      pixelsAt: space.take(level.pixels.byteLength),
    }))
    const censusBoxes = space.take(boxes.length * 12)
    places.curvesAt = space.take(8 * (6 + 3 * 257 + 6 * 256))
    places.weightsAt = space.take(8 * 21)
    places.limitsAt = space.take(8 * 12)
    places.openKeys = space.take(MOST_OPEN * 4)
    const buffer = space.settle()
    copy(buffer, censusLevels ?? 0, census.levels)
    copy(buffer, censusCounts ?? 0, census.counts)
    const table = new Uint32Array(buffer, censusBoxes, boxes.length * 3)
    for (const [i, { level, boxesAt, pixelsAt }] of boxes.entries()) {
      copy(buffer, boxesAt, level.boxes)
      copy(buffer, pixelsAt, level.pixels)
      table.set([boxesAt, pixelsAt, level.pixels.length], i * 3)
    }
    applySettings(module, {
      ...places,
      censusLevels: censusLevels ?? 0,
      censusCounts: censusCounts ?? 0,
      censusKeys: census.keys.length,
      isBoxed: !isExactShape(census.shape),
      censusBoxes,
      openLimit: MOST_OPEN,
    })
    return boxes.length - 1
  }
  /** The counter of a census. */
  return (census: CensusData): OutsideCounter => {
    const reference = createOutsideCounter(census)
    return (question) => {
      if (laid?.census !== census || laid.use !== uses()) {
        const top = lay(census)
        laid = { census, top, use: uses() }
      }
      const { starts, piecesPerUnit, levels, bends, slacks } = question.curves
      const { buffer } = module.memory
      copyAll(buffer, places.curvesAt, [starts, piecesPerUnit, levels, bends, slacks])
      copyAll(buffer, places.weightsAt, [question.weights])
      copyAll(buffer, places.limitsAt, [question.limits])
      applySettings(module, { figureCount: question.weights.length / 3 })
      const count = module.countOutside(laid.top)
      if (count > MOST_OPEN) return reference(question)
      return {
        atLeast: module.pixelsOutside(),
        atMost: module.pixelsNotInside(),
        open: new Int32Array(buffer, places.openKeys, count),
      }
    }
  }
}

type Numbers = Float32Array | Float64Array | Uint32Array

const copy = (buffer: ArrayBufferLike, address: number, numbers: Numbers): void => {
  const bytes = new Uint8Array(numbers.buffer, numbers.byteOffset, numbers.byteLength)
  new Uint8Array(buffer, address, bytes.length).set(bytes)
}

const copyAll = (buffer: ArrayBufferLike, address: number, all: readonly Numbers[]): void => {
  let next = address
  for (const numbers of all) {
    copy(buffer, next, numbers)
    next += numbers.byteLength
  }
}
