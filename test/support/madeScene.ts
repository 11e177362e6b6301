import type { Planes } from '../../src/core/picture/planes.ts'
import { seeded } from './seeded.ts'

/** A made-up scene that a camera can look at: grey levels 0…1 of a large picture. */
export type Scene = { readonly size: number; readonly grey: Float32Array }

const SIZE = 512

/** Soft blobs and hard-edged boxes at places and levels that depend on the seed. */
export const makeScene = (seed: number): Scene => {
  const random = seeded(seed)
  const grey = new Float32Array(SIZE * SIZE).fill(0.2 + 0.5 * random())
  for (let k = 0; k < 90; k++) {
    const cx = random() * SIZE
    const cy = random() * SIZE
    const w = 8 + random() * 90
    const h = 8 + random() * 70
    const level = random()
    const isSoft = random() < 0.4
    const top = Math.max(0, Math.floor(cy - h))
    const left = Math.max(0, Math.floor(cx - w))
    for (let y = top; y < Math.min(SIZE, cy + h); y++)
      for (let x = left; x < Math.min(SIZE, cx + w); x++) {
        const share = isSoft ? Math.max(0, 1 - Math.hypot((x - cx) / w, (y - cy) / h)) : 0.8
        const i = y * SIZE + x
        grey[i] = (grey[i] ?? 0) * (1 - share) + level * share
      }
  }
  return { size: SIZE, grey }
}

/** Where a camera looks: centre and width as parts of the scene. */
export type Look = { readonly x: number; readonly y: number; readonly width: number }

export const FRAME_WIDTH = 192
export const FRAME_HEIGHT = 144

/** What the camera sees, as grey 0…1, FRAME_WIDTH × FRAME_HEIGHT, read between the scene's points. */
export const lookAt = ({ size, grey }: Scene, { x, y, width }: Look): Float32Array => {
  const out = new Float32Array(FRAME_WIDTH * FRAME_HEIGHT)
  const scale = (width * size) / FRAME_WIDTH
  const inside = (place: number): number => Math.min(size - 1.001, Math.max(0, place))
  for (let row = 0; row < FRAME_HEIGHT; row++)
    for (let column = 0; column < FRAME_WIDTH; column++) {
      const sx = inside(x * size + (column - FRAME_WIDTH / 2) * scale)
      const sy = inside(y * size + (row - FRAME_HEIGHT / 2) * scale)
      const at = Math.floor(sy) * size + Math.floor(sx)
      const [fx, fy] = [sx % 1, sy % 1]
      const point = (offset: number): number => grey[at + offset] ?? 0
      const top = point(0) * (1 - fx) + point(1) * fx
      const bottom = point(size) * (1 - fx) + point(size + 1) * fx
      out[row * FRAME_WIDTH + column] = top * (1 - fy) + bottom * fy
    }
  return out
}

/** Grey levels as an 8-bit 4:2:0 picture without colour. */
export const greyPlanes = (grey: Float32Array): Planes => ({
  width: FRAME_WIDTH,
  height: FRAME_HEIGHT,
  layout: '420',
  depth: 8,
  samples: [
    Uint8Array.from(grey, (level) => Math.min(254, Math.max(1, Math.round(16 + 219 * level)))),
    new Uint8Array((FRAME_WIDTH * FRAME_HEIGHT) / 4).fill(128),
    new Uint8Array((FRAME_WIDTH * FRAME_HEIGHT) / 4).fill(128),
  ],
})
