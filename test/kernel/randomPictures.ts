import type { Grade } from '../../src/core/colour/grade.ts'
import type { Triple } from '../../src/core/colour/triple.ts'
import type { Framing } from '../../src/core/picture/framing.ts'
import {
  chromaHeight,
  chromaWidth,
  type Layout,
  type Planes,
  type Samples,
} from '../../src/core/picture/planes.ts'

export type Random = () => number

/** Numbers in 0…1, the same for the same seed (a 32-bit mixing generator). */
export const seeded = (seed: number): Random => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x9e3779b9) >>> 0
    let z = state
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad)
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97)
    return ((z ^ (z >>> 15)) >>> 0) / 2 ** 32
  }
}

export const between = (random: Random, low: number, high: number): number =>
  low + (high - low) * random()

/** The planes of a picture whose code values are given for each plane, column and row. */
export const planesOf = (
  layout: Layout,
  depth: number,
  width: number,
  height: number,
  code: (plane: number, x: number, y: number) => number,
): Planes => {
  const largest = 2 ** depth - 1
  const plane = (index: number): Samples => {
    const columns = index === 0 ? width : chromaWidth(layout, width)
    const rows = index === 0 ? height : chromaHeight(layout, height)
    const samples = depth > 8 ? new Uint16Array(columns * rows) : new Uint8Array(columns * rows)
    for (let i = 0; i < samples.length; i++) {
      const value = Math.round(code(index, i % columns, Math.floor(i / columns)))
      samples[i] = Math.min(largest, Math.max(0, value))
    }
    return samples
  }
  return { width, height, layout, depth, samples: [plane(0), plane(1), plane(2)] }
}

/** Codes anywhere in the depth, with the corners of the scale (black, zero chroma) often. */
export const noisePlanes = (
  random: Random,
  layout: Layout,
  depth: number,
  width: number,
  height: number,
): Planes =>
  planesOf(layout, depth, width, height, (plane) => {
    const pick = random()
    if (pick < 0.1) return 0
    if (pick < 0.2) return 2 ** depth - 1
    if (pick < 0.4) return (plane === 0 ? 16 : 128) * 2 ** (depth - 8)
    return random() * 2 ** depth
  })

/** Smooth shading, a bright and a dark disc, a coloured edge and grain: like a photograph. */
export const shadedPlanes = (
  random: Random,
  layout: Layout,
  depth: number,
  width: number,
  height: number,
): Planes => {
  const step = 2 ** (depth - 8)
  return planesOf(layout, depth, width, height, (plane, x, y) => {
    const columns = plane === 0 ? width : chromaWidth(layout, width)
    const rows = plane === 0 ? height : chromaHeight(layout, height)
    const u = x / columns
    const v = y / rows
    const grain = (random() - 0.5) * 6
    if (plane === 0) {
      const sun = Math.hypot(u - 0.7, v - 0.3) < 0.12 ? 60 : 0
      const shade = Math.hypot(u - 0.25, v - 0.7) < 0.2 ? -50 : 0
      return step * (70 + 90 * u + 30 * Math.sin(9 * v) + sun + shade + grain)
    }
    const edge = u > 0.5 ? 22 : -14
    return step * (128 + (plane === 1 ? edge : -edge * v) + grain / 3)
  })
}

const randomTriple = (random: Random, low: number, high: number): Triple => [
  between(random, low, high),
  between(random, low, high),
  between(random, low, high),
]

export const randomGrade = (random: Random): Grade => ({
  lift: random() < 0.3 ? [0, 0, 0] : randomTriple(random, -0.15, 0.15),
  gamma: random() < 0.2 ? [1, 1, 1] : randomTriple(random, 0.4, 2.4),
  gain: randomTriple(random, 0.6, 1.4),
  saturation: random() < 0.3 ? 1 : between(random, 0, 2),
})

export const randomFraming = (random: Random): Framing => ({
  zoom: between(random, 0.6, 3),
  pan: between(random, -0.6, 0.6),
  tilt: between(random, -0.6, 0.6),
  rotation: random() < 0.5 ? 0 : between(random, -60, 60),
  squeeze: between(random, 0.8, 1.4),
  blanking: random() < 0.5 ? 0 : between(random, -0.4, 0.4),
})
