import { chromaHeight, chromaWidth, type Planes } from '../../../src/core/picture/planes.ts'
import type { MediaFacts } from '../../../src/media/mediaFacts.ts'

/** What a reader must say of one of the clips made by `test/media/make-numbered-clips.mjs`. */
export type NumberedClip = {
  readonly file: string
  readonly facts: Partial<MediaFacts>
  /** The number in the clip's first picture, where it does not begin at 0. */
  readonly firstNumber?: number
}

const PLAIN = { width: 128, height: 96, depth: 8, layout: '420', frames: 60 } as const
const UNSTATED = { matrix: undefined, range: undefined } as const
const fps = (num: number, den = 1) => ({ num, den })

export const NUMBERED_CLIPS: readonly NumberedClip[] = [
  {
    file: 'h264-bframes-24.mp4',
    facts: {
      ...PLAIN,
      container: 'MP4',
      codec: 'H.264',
      rate: fps(24),
      matrix: 'bt709',
      range: 'narrow',
      displayAspect: 128 / 96,
    },
  },
  {
    file: 'h264-fragmented-25.mp4',
    facts: { ...PLAIN, ...UNSTATED, container: 'MP4', rate: fps(25) },
  },
  {
    file: 'h264-2398.mov',
    facts: { ...PLAIN, ...UNSTATED, container: 'MOV', codec: 'H.264', rate: fps(24000, 1001) },
  },
  {
    file: 'h264-2997.mkv',
    facts: {
      ...PLAIN,
      container: 'Matroska',
      rate: fps(30000, 1001),
      matrix: 'bt601',
      range: 'narrow',
      displayAspect: 1,
    },
  },
  {
    file: 'h264-25.mpegts',
    facts: { ...PLAIN, ...UNSTATED, container: 'MPEG transport stream', rate: fps(25) },
  },
  { file: 'h264-open-gop-25.mp4', facts: { ...PLAIN, rate: fps(25) } },
  { file: 'h264-high10-25.mp4', facts: { ...PLAIN, depth: 10, rate: fps(25) } },
  {
    file: 'h264-422-10bit-25.mov',
    facts: { ...PLAIN, depth: 10, layout: '422', matrix: 'bt709', range: 'narrow' },
  },
  {
    file: 'h264-cropped-full-25.mp4',
    facts: { ...PLAIN, width: 136, height: 100, matrix: 'bt709', range: 'full' },
  },
  {
    file: 'vp8-hidden-25.webm',
    facts: { ...PLAIN, ...UNSTATED, container: 'WebM', codec: 'VP8', rate: fps(25) },
  },
  {
    file: 'vp9-10bit-25.webm',
    facts: {
      ...PLAIN,
      container: 'WebM',
      codec: 'VP9',
      depth: 10,
      matrix: 'bt2020',
      range: 'narrow',
    },
  },
  { file: 'vp9-odd-size-25.webm', facts: { ...PLAIN, width: 131, height: 97, rate: fps(25) } },
  { file: 'vp9-doubled-stamps.mkv', facts: { ...PLAIN, container: 'Matroska', depth: 10 } },
  { file: 'av1-24.mp4', facts: { ...PLAIN, container: 'MP4', codec: 'AV1', rate: fps(24) } },
  {
    file: 'prores.mov',
    facts: { ...PLAIN, width: 64, height: 48, depth: 10, layout: '422', frames: 2 },
  },
  {
    file: 'prores-422-25.mov',
    facts: {
      ...PLAIN,
      ...UNSTATED,
      container: 'MOV',
      codec: 'ProRes',
      depth: 10,
      layout: '422',
      frames: 12,
      rate: fps(25),
    },
  },
  {
    file: 'prores-4444-24.mov',
    facts: { ...PLAIN, codec: 'ProRes', depth: 12, layout: '444', frames: 6, rate: fps(24) },
  },
  { file: 'h264-rgb-25.mp4', facts: { ...PLAIN, layout: 'rgb', frames: 12 } },
  { file: 'h264-turned.mp4', facts: { ...PLAIN, layout: 'rgb', frames: 12 } },
  { file: 'h264-uneven.mkv', facts: { ...PLAIN, rate: undefined } },
  { file: 'h264-ends-early.mp4', facts: { ...PLAIN, frames: 36, rate: fps(24) } },
  { file: 'h264-edit-list.mp4', facts: { ...PLAIN, frames: 50, rate: fps(24) }, firstNumber: 10 },
]

/** The number drawn into a picture's first plane as sixteen columns, the highest bit first. */
export const numberIn = ({ width, height, depth, samples }: Planes): number => {
  const column = Math.floor(width / 16)
  const row = width * (height >> 2)
  let number = 0
  for (let bit = 0; bit < 16; bit++) {
    const value = samples[0][row + bit * column + (column >> 1)] ?? Number.NaN
    number = 2 * number + (value / 2 ** (depth - 8) > 120 ? 1 : 0)
  }
  return number
}

/** What is wrong with the shape of a picture's planes; empty where all is well. */
export const shapeFaults = (planes: Planes, facts: MediaFacts): readonly string[] => {
  const faults: string[] = []
  const { width, height, layout, depth, samples } = planes
  for (const key of ['width', 'height', 'layout', 'depth'] as const)
    if (planes[key] !== facts[key]) faults.push(`${key} ${planes[key]}, facts say ${facts[key]}`)
  for (const [index, plane] of samples.entries()) {
    const count =
      index === 0 ? width * height : chromaWidth(layout, width) * chromaHeight(layout, height)
    if (plane.length !== count) faults.push(`plane ${index}: ${plane.length} samples, not ${count}`)
    if (plane instanceof Uint16Array !== depth > 8) faults.push(`plane ${index}: other array type`)
  }
  return faults
}

/** Frames to ask for one at a time, in an order that jumps about: the same on every run. */
export const seededFrames = (count: number, frames: number, seed = 1): readonly number[] => {
  let state = seed
  return Array.from({ length: count }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return Math.floor((state / 2 ** 32) * frames)
  })
}
