import { createPrintTaker, type ReelPrints } from '../../src/core/conform/reelPrints.ts'
import type { Planes } from '../../src/core/picture/planes.ts'
import type { Boundary } from '../../src/core/shots/boundary.ts'
import { type FrameSignature, frameSignature } from '../../src/core/shots/frameSignature.ts'
import { createShotFinder } from '../../src/core/shots/shotFinder.ts'
import { frame } from '../../src/core/time/frame.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { seeded } from './seeded.ts'

/** 8-bit luma of a picture. */
export type Luma = { readonly width: number; readonly height: number; readonly codes: Uint8Array }

/** Luma of half the width and height, the mean of each four codes. */
const halved = (codes: ArrayLike<number>, width: number, height: number): Luma => {
  const [across, down] = [width >> 1, height >> 1]
  const out = new Uint8Array(across * down)
  for (let y = 0, k = 0; y < down; y++)
    for (let x = 0; x < across; x++, k++) {
      const i = 2 * (y * width + x)
      const sum = [i, i + 1, i + width, i + width + 1].reduce((all, j) => all + (codes[j] ?? 0), 0)
      out[k] = Math.round(sum / 4)
    }
  return { width: across, height: down, codes: out }
}

/** Every frame of an 8-bit file: its luma alone, half as wide and high. */
export const readLuma = async (path: string): Promise<readonly Luma[]> => {
  const opened = await openMediaNode(path)
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const source = opened.value
  const frames: Luma[] = []
  try {
    for await (const { planes } of source.readRange(frame(0), frame(source.facts.frames))) {
      const { width, height, samples } = planes
      frames.push(halved(samples[0], width, height))
    }
  } finally {
    source.close()
  }
  return frames
}

/** How another scanner shows a picture. */
export type Rescan = {
  readonly gain?: number
  readonly offset?: number
  readonly gamma?: number
  /** Pixels to the right and down, and growth about the middle. */
  readonly dx?: number
  readonly dy?: number
  readonly zoom?: number
  /** Standard deviation of grain, as signal, of each pixel. */
  readonly grain?: number
}

/** A picture scanned again: moved by linear interpolation, its levels changed, grain laid over. */
export const rescanned = (
  { width, height, codes }: Luma,
  { gain = 1, offset = 0, gamma = 1, dx = 0, dy = 0, zoom = 1, grain = 0 }: Rescan,
  random: () => number,
): Luma => {
  const level = Float32Array.from({ length: 256 }, (_, code) => {
    const signal = Math.max(0, (code - 16) / 219)
    return offset + gain * signal ** gamma
  })
  const out = new Uint8Array(codes.length)
  const [cx, cy] = [(width - 1) / 2, (height - 1) / 2]
  for (let y = 0; y < height; y++) {
    const v = Math.min(Math.max(cy + (y - cy - dy) / zoom, 0), height - 1.001)
    const [row, down] = [Math.floor(v), v % 1]
    for (let x = 0; x < width; x++) {
      const u = Math.min(Math.max(cx + (x - cx - dx) / zoom, 0), width - 1.001)
      const [column, across] = [Math.floor(u), u % 1]
      const i = row * width + column
      const a = level[codes[i] as number] as number
      const b = level[codes[i + 1] as number] as number
      const c = level[codes[i + width] as number] as number
      const d = level[codes[i + width + 1] as number] as number
      let value = (a + (b - a) * across) * (1 - down) + (c + (d - c) * across) * down
      if (grain > 0) value += grain * 2 * (random() + random() + random() - 1.5)
      out[y * width + x] = Math.min(255, Math.max(0, Math.round(16 + 219 * value)))
    }
  }
  return { width, height, codes: out }
}

const planesOf = ({ width, height, codes }: Luma, chroma: Uint8Array): Planes => ({
  width,
  height,
  layout: '420',
  depth: 8,
  samples: [codes, chroma, chroma],
})

/** The signatures of these frames of a reel, in this order, scanned again. */
export const signaturesOf = (
  frames: readonly Luma[],
  order: readonly number[],
  how: Rescan = {},
  seed = 1,
): readonly FrameSignature[] => {
  const random = seeded(seed)
  const first = frames[0] as Luma
  const chroma = new Uint8Array(((first.width + 1) >> 1) * ((first.height + 1) >> 1)).fill(128)
  return order.map((n) => {
    const luma = frames[n]
    if (!luma) throw new Error(`no frame ${n}`)
    return frameSignature(planesOf(rescanned(luma, how, random), chroma))
  })
}

/** The prints of a reel of these signatures. */
export const printsOf = (signatures: readonly FrameSignature[]): ReelPrints => {
  const taker = createPrintTaker(signatures.length)
  const finder = createShotFinder()
  const boundaries: Boundary[] = []
  for (const signature of signatures) {
    taker.push(signature)
    boundaries.push(...finder.push(signature))
  }
  return taker.finish([...boundaries, ...finder.finish()])
}

/** Frames `from` up to `to`. */
export const span = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from }, (_, k) => from + k)
