import { at } from '../core/base/assert.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import type { RgbPicture } from '../core/picture/rgbPicture.ts'
import type { Rate } from '../core/time/rate.ts'

/**
 * What the levels of a still are: video whose colours are those of a luma equation's standard,
 * printing density, or a scan whose levels no standard has a name for.
 */
export type StillSignal = MatrixName | 'printing-density' | 'as-scanned'

/** What is told in the file of a still, as far as the format has a place for it. */
export type StillWords = {
  readonly name: string
  readonly signal: StillSignal
  readonly rate: Rate
  /** Label of the frame, hours:minutes:seconds:frames. */
  readonly timecode: string
  /** Width of a pixel over its height. */
  readonly pixelAspect: number
}

/** A picture laid out in bytes as its file has them: see `DeliveredForm`. */
export type LaidStill = {
  readonly width: number
  readonly height: number
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly words: StillWords
}

/** A picture as full-range codes, 0 black and the largest peak, and how much of it lay past them. */
export type StillCodes = {
  readonly samples: readonly [Uint16Array, Uint16Array, Uint16Array]
  /** Pixels with a level more than half a code below black or above peak, which was clipped. */
  readonly clipped: number
}

/** R′G′B′ → full-range codes of `depth` bits (10 or 16), rounded, clipped at black and peak. */
export const stillCodes = ({ width, height, r, g, b }: RgbPicture, depth: 10 | 16): StillCodes => {
  const largest = 2 ** depth - 1
  const isPast = new Uint8Array(width * height)
  const plane = (levels: Float64Array): Uint16Array => {
    const codes = new Uint16Array(levels.length)
    for (let i = 0; i < levels.length; i++) {
      const code = Math.floor(at(levels, i) * largest + 0.5)
      const kept = code > 0 ? Math.min(code, largest) : 0
      if (kept !== code) isPast[i] = 1
      codes[i] = kept
    }
    return codes
  }
  const samples = [plane(r), plane(g), plane(b)] as const
  return { samples, clipped: isPast.reduce((sum, past) => sum + past, 0) }
}

/** Codes of 16 bits pixel by pixel: the form 'rgb16'. */
export const rgb16Of = (
  { samples }: Pick<StillCodes, 'samples'>,
  isLittleEndian: boolean,
): Uint8Array<ArrayBuffer> => {
  const [r, g, b] = samples
  const bytes = new Uint8Array(6 * r.length)
  const view = new DataView(bytes.buffer)
  for (let i = 0; i < r.length; i++) {
    view.setUint16(6 * i, at(r, i), isLittleEndian)
    view.setUint16(6 * i + 2, at(g, i), isLittleEndian)
    view.setUint16(6 * i + 4, at(b, i), isLittleEndian)
  }
  return bytes
}

/** Codes of 10 bits as big-endian words, a pixel each: the form 'words10'. */
export const words10Of = ({ samples }: Pick<StillCodes, 'samples'>): Uint8Array<ArrayBuffer> => {
  const [r, g, b] = samples
  const bytes = new Uint8Array(4 * r.length)
  const view = new DataView(bytes.buffer)
  for (let i = 0; i < r.length; i++)
    view.setUint32(4 * i, ((at(r, i) << 22) | (at(g, i) << 12) | (at(b, i) << 2)) >>> 0)
  return bytes
}

const SIGNAL_WORDS: Readonly<Record<StillSignal, string>> = {
  bt601: "R'G'B' of BT.601",
  bt709: "R'G'B' of BT.709",
  bt2020: "R'G'B' of BT.2020",
  'printing-density': 'printing density',
  'as-scanned': 'R, G, B as scanned',
}

/** What the codes of a still are, in plain ASCII. */
export const signalWords = (signal: StillSignal): string => `${SIGNAL_WORDS[signal]}, full range`

/** A pixel's shape as how many of them go across and down in the same length, in whole numbers. */
export const pixelDensity = (pixelAspect: number): readonly [across: number, down: number] => [
  10_000,
  Math.round(10_000 * pixelAspect),
]
