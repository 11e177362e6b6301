import type { FrameSignature } from './frameSignature.ts'
import { pictureChange } from './pictureChange.ts'

/** The frames the shot finder can look at just now, by their number. */
export type FrameWindow = {
  /** First frame still held, and the number after the last one. */
  readonly begin: () => number
  readonly end: () => number
  readonly at: (n: number) => FrameSignature | undefined
  /** `pictureChange` of two frames; 0 where one is not held. Remembered. */
  readonly change: (a: number, b: number) => number
  /** How the luma of two frames goes together: their covariance. Remembered. */
  readonly covariance: (a: number, b: number) => number
  readonly push: (signature: FrameSignature) => void
}

/** Contrast, as signal, below which a frame shows nothing: black, white, or one colour. */
const BLANK_BELOW = 0.01

export const isBlank = (signature: FrameSignature | undefined): boolean =>
  signature !== undefined && signature.deviation < BLANK_BELOW

/** More than the distance of any two frames that are compared: packs a pair into one number. */
const SPAN = 1024

/** Two pictures whose luma correlates this well (r²) are one scene without any looking closer. */
const ALIKE = 0.97

/** A memory of values for pairs of frames, forgotten with the frames. */
const createPairMemory = (work: (a: number, b: number) => number) => {
  const known = new Map<number, number>()
  return {
    get: (a: number, b: number): number => {
      const key = Math.min(a, b) * SPAN + Math.abs(b - a)
      const before = known.get(key)
      if (before !== undefined) return before
      const value = work(Math.min(a, b), Math.max(a, b))
      known.set(key, value)
      return value
    },
    forget: (first: number): void => {
      for (const key of known.keys()) if (key < first * SPAN) known.delete(key)
    },
  }
}

/** Pairs are forgotten once in so many frames: looking through them all costs more. */
const FORGET_EVERY = 32

/** A window that holds the last `size` frames. */
export const createFrameWindow = (size: number): FrameWindow => {
  const held: FrameSignature[] = []
  let first = 0
  const at = (n: number): FrameSignature | undefined => held[n - first]
  const covariances = createPairMemory((a, b) => {
    const one = at(a)
    const other = at(b)
    return one && other ? lumaCovariance(one, other) : 0
  })
  const changes = createPairMemory((a, b) => {
    const one = at(a)
    const other = at(b)
    if (!one || !other) return 0
    const covariance = covariances.get(a, b)
    const energy = (one.deviation * other.deviation) ** 2
    const isAlike = covariance > 0 && covariance * covariance > ALIKE * energy
    return isAlike ? 0 : pictureChange(one, other)
  })
  return {
    begin: () => first,
    end: () => first + held.length,
    at,
    change: changes.get,
    covariance: covariances.get,
    push: (signature) => {
      held.push(signature)
      if (held.length <= size) return
      held.shift()
      first++
      if (first % FORGET_EVERY !== 0) return
      covariances.forget(first)
      changes.forget(first)
    },
  }
}

/** Covariance of the luma means of two pictures. */
const lumaCovariance = (a: FrameSignature, b: FrameSignature): number => {
  let sum = 0
  for (let i = 0; i < a.luma.length; i++) sum += (a.luma[i] as number) * (b.luma[i] as number)
  return sum / a.luma.length - a.mean * b.mean
}
