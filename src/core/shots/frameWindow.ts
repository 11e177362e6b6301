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
  readonly push: (signature: FrameSignature) => void
}

/** Contrast, as signal, below which a frame shows nothing: black, white, or one colour. */
const BLANK_BELOW = 0.01

export const isBlank = (signature: FrameSignature | undefined): boolean =>
  signature !== undefined && signature.deviation < BLANK_BELOW

/** More than the distance of any two frames that are compared: packs a pair into one number. */
const SPAN = 1024

/** A window that holds the last `size` frames. */
export const createFrameWindow = (size: number): FrameWindow => {
  const held: FrameSignature[] = []
  const known = new Map<number, number>()
  let first = 0
  const at = (n: number): FrameSignature | undefined => held[n - first]
  return {
    begin: () => first,
    end: () => first + held.length,
    at,
    change: (a, b) => {
      const key = a * SPAN + (b - a)
      const before = known.get(key)
      if (before !== undefined) return before
      const one = at(a)
      const other = at(b)
      const change = one && other ? pictureChange(one, other) : 0
      known.set(key, change)
      return change
    },
    push: (signature) => {
      held.push(signature)
      if (held.length <= size) return
      held.shift()
      first++
      for (const key of known.keys()) {
        if (key >= first * SPAN) continue
        known.delete(key)
      }
    },
  }
}
