import type { Ink } from './instrumentInks.ts'

/** A picture that is painted anew for each reading. One of a size is kept and used by all. */
export type TraceBitmap = {
  /** A word a pixel: alpha, blue, green, red from its highest byte (canvases are little-endian). */
  readonly words: Uint32Array
  /** The canvas with what the words now hold. */
  readonly show: () => OffscreenCanvas
}

const kept = new Map<string, TraceBitmap>()
const MOST_KEPT = 6

/** A clear bitmap of a size; what was painted into one of the same size before is gone. */
export const traceBitmap = (width: number, height: number): TraceBitmap => {
  const name = `${width}×${height}`
  const found = kept.get(name)
  if (found) {
    found.words.fill(0)
    return found
  }
  const canvas = new OffscreenCanvas(width, height)
  const context = canvas.getContext('2d')
  const image = new ImageData(width, height)
  const made: TraceBitmap = {
    words: new Uint32Array(image.data.buffer),
    show: () => {
      context?.putImageData(image, 0, 0)
      return canvas
    },
  }
  if (kept.size >= MOST_KEPT) kept.clear()
  kept.set(name, made)
  return made
}

export const wordOf = (r: number, g: number, b: number): number =>
  ((255 << 24) | (b << 16) | (g << 8) | r) >>> 0

/** The least brightness of what was counted at all. */
const FAINTEST = 45

/** Counts told apart; more are as bright as this many. */
const COUNTS = 16_384

/**
 * How bright counts are drawn, 0…255, where `most` and more are full. It depends on a count alone
 * and not on the others, so that a change elsewhere leaves a trace as it is. By 'root' thin parts
 * are seen beside dense ones; by 'logarithm' they are seen beside what nearly all lies on.
 */
export const brightnessBy = (curve: 'root' | 'logarithm'): ((most: number) => Uint8Array) => {
  const table = new Uint8Array(COUNTS)
  let madeFor = 0
  const partOf = (count: number, most: number): number =>
    curve === 'root' ? Math.sqrt(count / most) : Math.log1p(count) / Math.log1p(most)
  return (most) => {
    const full = Math.max(1, most)
    if (madeFor === full) return table
    madeFor = full
    for (let count = 1; count < COUNTS; count++)
      table[count] = FAINTEST + (255 - FAINTEST) * Math.min(1, partOf(count, full))
    return table
  }
}

/** A count's place in the table of brightness. */
export const inTable = (count: number): number => (count < COUNTS ? count : COUNTS - 1)

/** The words of an ink for each brightness. */
export const inkWords = ([r, g, b]: Ink): Uint32Array => {
  const words = new Uint32Array(256)
  for (let v = 1; v < 256; v++) words[v] = wordOf((r * v) / 255, (g * v) / 255, (b * v) / 255)
  return words
}

/** Inks over each other let through what any of them does, 0…255: all of them make white. */
export const screened = (a: number, b: number, c: number): number =>
  255 - ((255 - a) * (255 - b) * (255 - c)) / 65_025
