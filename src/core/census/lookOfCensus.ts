import { at } from '../base/assert.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import type { Coding, MatrixName } from '../picture/planes.ts'
import type { CensusData, ColourTally } from './censusData.ts'
import { isExactShape } from './censusShape.ts'
import { type CueLook, LOOK_LEVELS, LOOK_SIDE, LOOK_SPAN } from './cueLook.ts'
import { keyBoxes } from './keyBoxes.ts'

const [LOWEST, HIGHEST] = LOOK_SPAN
const LEVEL_SCALE = LOOK_LEVELS / (HIGHEST - LOWEST)

/** A colour difference this far from grey lies half way out: boxes are finer where film is. */
const HALF_WAY = 0.1

/** A colour difference (±0.5) as a place −1 … 1, finer near grey. */
const outFromGrey = (difference: number): number => difference / (Math.abs(difference) + HALF_WAY)

/** Where a place 0 … 1 lies among the middles of boxes, kept within the first and the last. */
const amongBoxes = (place: number): number =>
  Math.min(LOOK_SIDE - 1, Math.max(0, place * LOOK_SIDE - 0.5))

/**
 * A look from colours: levels counted, and each colour shared out among the eight boxes it lies
 * between, so that a small change of exposure moves a small part. `read` writes the R′, G′, B′ of a
 * colour, the middle of its box where keys are boxes, into the first three places.
 */
const lookFrom = (
  counts: Uint32Array,
  matrix: MatrixName,
  read: (place: number, into: Float64Array) => void,
): CueLook => {
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  const binned = [0, 1, 2, 3].map(() => new Float32Array(LOOK_LEVELS))
  const spread = new Float64Array(LOOK_SIDE ** 3)
  const channels = new Float64Array(4)
  const boxes = new Float64Array(3)
  let pixels = 0
  for (let i = 0; i < counts.length; i++) {
    const count = counts[i] as number
    pixels += count
    read(i, channels)
    const [r, g, b] = channels as unknown as readonly [number, number, number]
    const y = kr * r + kg * g + kb * b
    channels[3] = y
    for (let c = 0; c < 4; c++) {
      const place = Math.floor(((channels[c] as number) - LOWEST) * LEVEL_SCALE)
      const level = Math.min(LOOK_LEVELS - 1, Math.max(0, place))
      const bins = binned[c] as Float32Array
      bins[level] = (bins[level] as number) + count
    }
    boxes[0] = amongBoxes(y)
    boxes[1] = amongBoxes(0.5 + outFromGrey((b - y) / (2 * (1 - kb))) / 2)
    boxes[2] = amongBoxes(0.5 + outFromGrey((r - y) / (2 * (1 - kr))) / 2)
    shareOut(spread, boxes, count)
  }
  return {
    pixels,
    levels: [at(binned, 0), at(binned, 1), at(binned, 2), at(binned, 3)],
    spread: Float32Array.from(spread, (part) => part / Math.max(1, pixels)),
  }
}

/** The look of a cue from its census. */
export const lookOfCensus = ({ levels, counts, shape, coding }: CensusData): CueLook => {
  const perKey = isExactShape(shape) ? 3 : 6
  return lookFrom(counts, coding.matrix, (place, into) => {
    for (let c = 0; c < 3; c++) {
      const low = levels[place * perKey + c] as number
      into[c] = perKey === 3 ? low : (low + (levels[place * perKey + 3 + c] as number)) / 2
    }
  })
}

/** The same from a tally, where no census is wanted: without what it costs to lay one out. */
export const lookOfTally = ({ keys, counts, shape }: ColourTally, coding: Coding): CueLook => {
  const boxOf = keyBoxes(shape, coding)
  return lookFrom(counts, coding.matrix, (place, into) => {
    const { low, high } = boxOf(keys[place] as number)
    for (const c of [0, 1, 2] as const) into[c] = (low[c] + high[c]) / 2
  })
}

/** Adds `count` to the boxes round a place, each by its nearness along the three axes. */
const shareOut = (spread: Float64Array, place: Float64Array, count: number): void => {
  for (let corner = 0; corner < 8; corner++) {
    let part = count
    let box = 0
    for (let axis = 0; axis < 3; axis++) {
      const along = place[axis] as number
      const before = Math.min(LOOK_SIDE - 2, Math.floor(along))
      const isUpper = (corner >> axis) & 1
      part *= isUpper ? along - before : before + 1 - along
      box = box * LOOK_SIDE + before + isUpper
    }
    spread[box] = (spread[box] as number) + part
  }
}

/** What holds a look's numbers: to be moved between workers. */
export const lookBuffers = ({ levels, spread }: CueLook): ArrayBufferLike[] => [
  ...levels.map(({ buffer }) => buffer),
  spread.buffer,
]
