import { describe, expect, it } from 'vitest'
import type { Layout, Planes } from '../../../src/core/picture/planes.ts'
import { chromaHeight, chromaWidth } from '../../../src/core/picture/planes.ts'
import { frameSignature } from '../../../src/core/shots/frameSignature.ts'

/** A slope from black at the left to peak white at the right, without colour. */
const slope = (layout: Layout, depth: number, width: number, height: number): Planes => {
  const of = (w: number, h: number, value: (x: number) => number) => {
    const samples = depth === 8 ? new Uint8Array(w * h) : new Uint16Array(w * h)
    return samples.map((_, i) => Math.round(value(((i % w) + 0.5) / w)))
  }
  const step = 2 ** (depth - 8)
  if (layout === 'rgb') {
    const plane = of(width, height, (x) => x * (2 ** depth - 1))
    return { width, height, layout, depth, samples: [plane, plane, plane] }
  }
  const chroma = of(chromaWidth(layout, width), chromaHeight(layout, height), () => 128 * step)
  const luma = of(width, height, (x) => (16 + 219 * x) * step)
  return { width, height, layout, depth, samples: [luma, chroma, chroma] }
}

describe('the signature of a frame', () => {
  it.each([
    ['420', 8, 720, 576],
    ['422', 10, 720, 576],
    ['444', 12, 640, 360],
    ['rgb', 16, 640, 360],
    ['420', 8, 1920, 1080],
    ['420', 8, 33, 17],
  ] as const)('of %s, %i bits, %i × %i is the same slope', (layout, depth, width, height) => {
    const { luma, cb, cr } = frameSignature(slope(layout, depth, width, height))
    for (const [i, value] of luma.entries())
      expect(Math.abs(value - ((i % 64) + 0.5) / 64)).toBeLessThan(0.01 + 0.5 / width)
    for (const value of [...cb, ...cr]) expect(Math.abs(value)).toBeLessThan(0.001)
  })
})
