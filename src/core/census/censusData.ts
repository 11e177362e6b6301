import type { Coding } from '../picture/planes.ts'
import type { CensusShape } from './censusShape.ts'

/** Colours of some pictures by key, and how many pixels have each. In no order. */
export type ColourTally = {
  readonly shape: CensusShape
  readonly keys: Uint32Array
  readonly counts: Uint32Array
}

/** Boxes over runs of colours or of other boxes: low and high of R′, G′, B′, and pixels in it. */
export type BoxLevel = {
  readonly boxes: Float32Array
  readonly pixels: Float64Array
}

/**
 * A cue's colours, laid out to be judged quickly: near colours lie together, and `boxes` are
 * ever larger boxes over them: `boxes[0]` over runs of LEAF colours, each next over runs of BRANCH
 * boxes, the last one box. Plain data: it can be sent between workers.
 */
export type CensusData = {
  readonly shape: CensusShape
  readonly coding: Coding
  readonly keys: Uint32Array
  readonly counts: Uint32Array
  /**
   * R′, G′, B′ before the grade of every key: three numbers, each the nearest f32, where a key is
   * one colour; low and high of its box, six numbers rounded outward, where it is not.
   */
  readonly levels: Float32Array
  readonly boxes: readonly BoxLevel[]
  readonly pixels: number
}

/** Colours under a lowest box, and boxes under a higher one. */
export const LEAF = 16
export const BRANCH = 8

/** A number that as f32 is surely not above (or, with −1, not below) a value. */
export const outward = (value: number, direction: 1 | -1): number =>
  Number.isFinite(value) ? value - direction * (Math.abs(value) * 2e-7 + 1e-30) : value

/** What holds the data of a census: to be moved between workers, or reckoned up. */
export const censusBuffers = ({ keys, counts, levels, boxes }: CensusData): ArrayBufferLike[] => [
  keys.buffer,
  counts.buffer,
  levels.buffer,
  ...boxes.flatMap((level) => [level.boxes.buffer, level.pixels.buffer]),
]
