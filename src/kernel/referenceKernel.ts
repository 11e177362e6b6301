import { at } from '../core/base/assert.ts'
import { createCensusReader } from '../core/census/censusVerdict.ts'
import { seenSpans } from '../core/census/seenSpans.ts'
import { createColourTally } from '../core/census/tallyColours.ts'
import { signalToCode } from '../core/colour/codeValues.ts'
import { meanCells } from '../core/flashes/meanCells.ts'
import { deliverPicture } from '../core/picture/deliverPicture.ts'
import { encodePicture } from '../core/picture/encodePicture.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import { limiterOf } from '../core/tolerance/limiter.ts'
import { limitPicture } from '../core/tolerance/limitPicture.ts'
import { pictureLevels } from '../core/tolerance/pictureLevels.ts'
import type { Delivered } from '../core/transfer/deliveredForm.ts'
import { laidOver, layDelivered } from '../core/transfer/layDelivered.ts'
import { LEVELS } from './bandCounters.ts'
import type {
  CodePicture,
  ColourCounter,
  DeliverOptions,
  Kernel,
  KernelInput,
  PictureReading,
} from './kernel.ts'

const delivered = ({ planes, coding, grade, framing }: KernelInput) =>
  deliverPicture(planes, coding, grade, framing)

const codesOf = (input: KernelInput, matrix: MatrixName): CodePicture => {
  const { width, height, samples } = encodePicture(delivered(input), matrix, 10)
  const [y, cb, cr] = samples.map((plane) => Uint16Array.from(plane))
  if (!y || !cb || !cr) throw new Error('Bug: a picture has three planes')
  return { width, height, y, cb, cr }
}

const laid = (input: KernelInput, { form, overlay, limiter }: DeliverOptions): Delivered => {
  const framed = delivered(input)
  const picture = overlay ? laidOver(framed, overlay) : framed
  if (!limiter || limiter.limiting === 'none') return { ...layDelivered(picture, form), limited: 0 }
  const { profile, limiting } = limiter
  const inside = limitPicture(picture, limiterOf(profile, limiting, input.coding.matrix))
  return { ...layDelivered(inside.picture, form), limited: inside.limited }
}

/** `size` counters (`into`, cleared, if it has them), one added at the place of each pixel. */
const count = (
  size: number,
  pixels: number,
  placeOf: (pixel: number) => number,
  into?: Uint32Array<ArrayBuffer>,
): Uint32Array<ArrayBuffer> => {
  const counts = into?.length === size ? into.fill(0) : new Uint32Array(size)
  for (let i = 0; i < pixels; i++) {
    const place = placeOf(i)
    counts[place] = at(counts, place) + 1
  }
  return counts
}

const columnCounts = (
  codes: Uint16Array,
  width: number,
  columns: number,
  into?: Uint32Array<ArrayBuffer>,
): Uint32Array<ArrayBuffer> => {
  const columnOf = (i: number) => Math.floor(((i % width) * columns) / width)
  const placeOf = (i: number) => columnOf(i) * LEVELS + (at(codes, i) >> 2)
  return count(columns * LEVELS, codes.length, placeOf, into)
}

const colourCounts = (
  { cb, cr }: CodePicture,
  size: number,
  into?: Uint32Array<ArrayBuffer>,
): Uint32Array<ArrayBuffer> => {
  const stepOf = (code: number) => Math.floor((code * size) / 1024)
  const placeOf = (i: number) => (size - 1 - stepOf(at(cr, i))) * size + stepOf(at(cb, i))
  return count(size * size, cb.length, placeOf, into)
}

/**
 * The float64 reference in the place of the kernel, for a host that has no vectors: the same
 * answers, about a hundred times later.
 */
export const referenceKernel = (): Kernel => {
  const tallies = new WeakMap<ColourCounter, ReturnType<typeof createColourTally>>()
  const measureLevels: Kernel['measureLevels'] = (input, matrix, profile, colours, cells) => {
    const { planes, coding, framing } = input
    if (colours)
      tallies
        .get(colours)
        ?.add(planes, seenSpans(framing, planes.width, planes.height, coding.pixelAspect))
    const picture = delivered(input)
    if (cells) meanCells(picture, cells)
    return pictureLevels(picture, matrix, profile)
  }
  return {
    isReference: true,
    deliverCodes: (input, matrix) => codesOf(input, matrix),
    deliver: (input, options, into) => {
      const { bytes, ...counts } = laid(input, options)
      if (into?.length !== bytes.length) return { bytes, ...counts }
      into.set(bytes)
      return { bytes: into, ...counts }
    },
    measureLevels,
    measurePicture: (input, matrix, profile, wants): PictureReading => {
      const { waveformColumns, paradeColumns, vectorscopeSize, histograms } = wants
      const { width } = input.planes
      const codes = codesOf(input, matrix)
      const picture = delivered(input)
      const [r, g, b] = [picture.r, picture.g, picture.b].map((plane) =>
        Uint16Array.from(plane, (signal) => signalToCode(signal, 10, 'narrow')),
      )
      if (!r || !g || !b) throw new Error('Bug: a picture has three channels')
      const histogram = (plane: Uint16Array) => columnCounts(plane, width, 1)
      const parade = (columns: number) =>
        [
          columnCounts(r, width, columns),
          columnCounts(g, width, columns),
          columnCounts(b, width, columns),
        ] as const
      return {
        levels: measureLevels(input, matrix, profile),
        ...(waveformColumns && { waveform: columnCounts(codes.y, width, waveformColumns) }),
        ...(paradeColumns && { parade: parade(paradeColumns) }),
        ...(vectorscopeSize && { vectorscope: colourCounts(codes, vectorscopeSize) }),
        ...(histograms && {
          histograms: {
            r: histogram(r),
            g: histogram(g),
            b: histogram(b),
            y: histogram(codes.y),
          },
        }),
      }
    },
    countColours: (range, most) => {
      const tally = createColourTally(range, most)
      const counter = { tally: tally.tally }
      tallies.set(counter, tally)
      return counter
    },
    censusReader: (census) => createCensusReader(census),
    lumaWaveform: ({ y, width }, columns, into) => columnCounts(y, width, columns, into),
    vectorscope: (codes, size, into) => colourCounts(codes, size, into),
  }
}
