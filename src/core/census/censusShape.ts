import { codeScale } from '../colour/codeValues.ts'
import type { Layout, RangeName } from '../picture/planes.ts'

/**
 * How a colour is told by a key of 32 bits. `first` is Y′ or R′, the other two are Cb and Cr, or G′
 * and B′, as whole numbers: codes, and for interpolated chroma the parts of a code that occur
 * (halves in 4:2:2, eighths in 4:2:0). From each the lowest bits may be dropped: a key then stands
 * for all colours of a small box.
 */
export type CensusShape = {
  readonly isRgb: boolean
  readonly depth: number
  readonly range: RangeName
  /** Parts of a code of the other two that are told apart: 1, 2 or 8. */
  readonly parts: number
  readonly firstDrop: number
  readonly otherDrop: number
}

const KEY_BITS = 32

const PARTS: Readonly<Record<Layout, number>> = { '420': 8, '422': 2, '444': 1, rgb: 1 }

/** Bits of the components after dropping. */
export const keyBits = ({ depth, parts, firstDrop, otherDrop }: CensusShape) => ({
  first: depth - firstDrop,
  other: depth + Math.log2(parts) - otherDrop,
})

/** The finest shape for such planes: exact where the three components fit 32 bits. */
export const finestShape = (layout: Layout, depth: number, range: RangeName): CensusShape => {
  let shape: CensusShape = {
    isRgb: layout === 'rgb',
    depth,
    range,
    parts: PARTS[layout],
    firstDrop: 0,
    otherDrop: 0,
  }
  while (keyBits(shape).first + 2 * keyBits(shape).other > KEY_BITS) shape = coarserShape(shape)
  return shape
}

/** The shape with a bit less of the component (or the two) that is told apart most finely. */
export const coarserShape = (shape: CensusShape): CensusShape => {
  const { black, peak, chromaHalf } = codeScale(shape.depth, shape.range)
  const firstStep = 2 ** shape.firstDrop / (peak - black)
  const otherScale = shape.isRgb ? peak - black : 2 * chromaHalf * shape.parts
  const otherStep = 2 ** shape.otherDrop / otherScale
  return otherStep <= firstStep
    ? { ...shape, otherDrop: shape.otherDrop + 1 }
    : { ...shape, firstDrop: shape.firstDrop + 1 }
}

/** Whether a key stands for one colour. */
export const isExactShape = ({ firstDrop, otherDrop }: CensusShape): boolean =>
  firstDrop === 0 && otherDrop === 0

/**
 * The key of a colour: from the top the components without their last bits, then these three bits.
 * So the keys of eight neighbouring colours are one after another.
 */
export const keyOf = (shape: CensusShape, first: number, second: number, third: number): number => {
  const a = first >> shape.firstDrop
  const b = second >> shape.otherDrop
  const c = third >> shape.otherDrop
  const { firstShift, secondShift } = keyShifts(shape)
  const high = ((a >> 1) << firstShift) | ((b >> 1) << secondShift) | ((c >> 1) << 3)
  return (high | ((a & 1) << 2) | ((b & 1) << 1) | (c & 1)) >>> 0
}

/** Where the first and the second component without their last bits stand in a key. */
export const keyShifts = (shape: CensusShape) => {
  const { other } = keyBits(shape)
  return { firstShift: 3 + 2 * (other - 1), secondShift: 3 + (other - 1) }
}

/** The components of a key, dropped bits 0: the lowest corner of its box. */
export const componentsOf = (
  shape: CensusShape,
  key: number,
): readonly [first: number, second: number, third: number] => {
  const { firstShift, secondShift } = keyShifts(shape)
  const mask = 2 ** (firstShift - secondShift) - 1
  const a = ((key >>> firstShift) << 1) | ((key >> 2) & 1)
  const b = (((key >>> secondShift) & mask) << 1) | ((key >> 1) & 1)
  const c = (((key >>> 3) & mask) << 1) | (key & 1)
  return [a << shape.firstDrop, b << shape.otherDrop, c << shape.otherDrop]
}

/** The key a key of a shape becomes in a coarser one. */
export const coarserKey = (from: CensusShape, to: CensusShape, key: number): number =>
  keyOf(to, ...componentsOf(from, key))
