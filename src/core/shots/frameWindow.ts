import { type FrameSignature, GRID_HEIGHT, GRID_WIDTH } from './frameSignature.ts'
import { areaOfCounts, litLines, type PictureArea } from './pictureArea.ts'
import { pictureChange } from './pictureChange.ts'
import { type SeenFrame, seenFrame } from './seenFrame.ts'

/** The frames the shot finder can look at just now, by their number. */
export type FrameWindow = {
  /** First frame still held, and the number after the last one. */
  readonly begin: () => number
  readonly end: () => number
  readonly at: (n: number) => SeenFrame | undefined
  readonly area: () => PictureArea
  /** `pictureChange` of two frames; 0 where one is not held. Remembered. */
  readonly change: (a: number, b: number) => number
  /** r² of the luma of two frames; 0 where they are each other's negative. */
  readonly alike: (a: number, b: number) => number
  readonly push: (signature: FrameSignature) => void
}

/** More than the distance of any two frames that are compared: packs a pair into one number. */
const SPAN = 1024

/** Two pictures whose luma correlates this well (r²) are one scene without any looking closer. */
const ALIKE = 0.97

/** Pairs are forgotten once in so many frames: looking through them all costs more. */
const FORGET_EVERY = 32

const isSameArea = (a: PictureArea, b: PictureArea): boolean =>
  a.left === b.left && a.right === b.right && a.top === b.top && a.bottom === b.bottom

/** A window that holds the last `size` frames. */
export const createFrameWindow = (size: number): FrameWindow => {
  let held: SeenFrame[] = []
  const lit: Uint8Array[] = []
  const counts = new Int32Array(GRID_HEIGHT + GRID_WIDTH)
  const known = new Map<number, number>()
  let area: PictureArea = { left: 0, top: 0, right: GRID_WIDTH, bottom: GRID_HEIGHT }
  let first = 0
  const at = (n: number): SeenFrame | undefined => held[n - first]
  const count = (lines: Uint8Array, sign: 1 | -1): void => {
    for (let i = 0; i < lines.length; i++)
      counts[i] = (counts[i] as number) + sign * (lines[i] as number)
  }
  const findArea = (): void => {
    const now = areaOfCounts(counts, held.length)
    if (isSameArea(now, area)) return
    area = now
    held = held.map(({ signature }) => seenFrame(signature, area))
    known.clear()
  }
  const work = (a: number, b: number): number => {
    const [one, other] = [at(a), at(b)]
    if (!one || !other) return 0
    return likeness(one, other, area) > ALIKE ? 0 : pictureChange(one, other, area)
  }
  return {
    begin: () => first,
    end: () => first + held.length,
    at,
    area: () => area,
    change: (m, n) => {
      const [a, b] = m < n ? [m, n] : [n, m]
      const key = a * SPAN + (b - a)
      const before = known.get(key)
      if (before !== undefined) return before
      const value = work(a, b)
      known.set(key, value)
      return value
    },
    alike: (a, b) => {
      const [one, other] = [at(a), at(b)]
      return one && other ? likeness(one, other, area) : 0
    },
    push: (signature) => {
      const lines = litLines(signature)
      held.push(seenFrame(signature, area))
      lit.push(lines)
      count(lines, 1)
      if (held.length > size) {
        held.shift()
        count(lit.shift() as Uint8Array, -1)
        first++
        if (first % FORGET_EVERY === 0)
          for (const key of known.keys()) if (key < first * SPAN) known.delete(key)
      }
      findArea()
    },
  }
}

/** r² of the luma of two pictures, 0 where they are each other's negative. */
const likeness = (a: SeenFrame, b: SeenFrame, area: PictureArea): number => {
  let sum = 0
  for (let y = area.top; y < area.bottom; y++)
    for (let i = y * GRID_WIDTH + area.left, end = y * GRID_WIDTH + area.right; i < end; i++)
      sum += (a.luma[i] as number) * (b.luma[i] as number)
  const count = (area.right - area.left) * (area.bottom - area.top)
  const covariance = sum / count - a.mean * b.mean
  if (covariance <= 0) return 0
  return (covariance * covariance) / (a.deviation * b.deviation) ** 2
}
