import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { decode } from 'fast-png'
import type { WeightedColours } from '../../src/core/census/weightedColours.ts'
import type { Triple } from '../../src/core/colour/triple.ts'

export const STILLS = [
  'airplane-from-above-128',
  'astronaut-128',
  'coffee-128',
  'desk-128',
  'dust-bowl-home-128',
  'still-life-128',
] as const

/** A photograph of `test/media/stills`: R′G′B′ (0…1) of every pixel, row by row. */
export const readStill = (name: string) => {
  const file = resolve(import.meta.dirname, `../media/stills/${name}.png`)
  const { width, height, channels, data } = decode(readFileSync(file))
  const pixels = Array.from({ length: width * height }, (_, i): Triple => {
    const sample = (c: number) => (data[i * channels + c] ?? 0) / 255
    return [sample(0), sample(1), sample(2)]
  })
  return { width, height, pixels }
}

/** Every pixel as a colour of weight 1. */
export const coloursOf = (pixels: readonly Triple[]): WeightedColours => ({
  colours: Float64Array.from(pixels.flat()),
  weights: new Float64Array(pixels.length).fill(1),
})
