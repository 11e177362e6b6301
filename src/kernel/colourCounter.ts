import { assert } from '../core/base/assert.ts'
import {
  type CensusShape,
  coarserKey,
  coarserShape,
  finestShape,
  keyBits,
  keyShifts,
} from '../core/census/censusShape.ts'
import { seenSpans } from '../core/census/seenSpans.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Planes, RangeName } from '../core/picture/planes.ts'
import type { BandWork } from './bandWork.ts'
import type { ColourCounter } from './kernel.ts'
import { applySettings, type KernelModule } from './kernelModule.ts'

/** A counter, and the work for one picture: it counts what the delivered picture is made from. */
export type WasmColourCounter = ColourCounter & {
  readonly work: (planes: Planes, framing: Framing, pixelAspect?: number) => BandWork
}

const SLOT_BYTES = 8
const LINE_SLOTS = 8
/** Bytes after a row, for whole vectors. */
const SLACK = 64
/** Colours that one row can add at most: colours are reckoned up after each. */
const ROW_COLOURS = 65_536

/** Four slots for each colour there may be: keys of different places seldom share a line. */
const log2Lines = (most: number): number =>
  Math.ceil(Math.log2((4 * (most + ROW_COLOURS)) / LINE_SLOTS))

/** Bytes of the table of a counter of at most `most` colours. */
export const colourTableBytes = (most: number): number =>
  2 ** log2Lines(most) * LINE_SLOTS * SLOT_BYTES

/** Bits of keys that have a counter (u32) each in the table of a counter of at most `most` colours. */
const directBits = (most: number): number => Math.log2(colourTableBytes(most) / 4)

/** A counter whose table lies at `table`; a later one at the same place ends it. */
export const createColourCounter = (
  module: KernelModule,
  table: number,
  range: RangeName,
  most: number,
): WasmColourCounter => {
  let shape: CensusShape | undefined
  let pairs = 0
  applySettings(module, { censusTable: table, lineShift: 32 - log2Lines(most) })

  /** To be called with an empty table or none: it is laid out by the shape. */
  const beginShape = (next: CensusShape): void => {
    shape = next
    const { firstDrop, otherDrop } = next
    const { first, other } = keyBits(next)
    const isDirect = first + 2 * other <= directBits(most)
    applySettings(module, { ...keyShifts(next), firstDrop, otherDrop, isDirect })
    module.clearCensus()
  }
  const read = (): Uint32Array => {
    module.writeCounts(pairs)
    return new Uint32Array(module.memory.buffer, pairs, module.censusColours() * 2)
  }
  const shrink = (from: CensusShape): void => {
    const to = coarserShape(from)
    const all = read()
    for (let i = 0; i < all.length; i += 2) all[i] = coarserKey(from, to, all[i] as number)
    beginShape(to)
    module.addCounts(pairs, all.length / 2)
  }
  return {
    work: ({ layout, depth, width, height }, framing, pixelAspect) => {
      assert(
        width <= ROW_COLOURS,
        `a row of ${width} pixels has more colours than are kept room for`,
      )
      const spans = seenSpans(framing, width, height, pixelAspect)
      const chromaLineBytes = Math.ceil(width / 2 + 1) * 4 + SLACK
      let chromaLines = 0
      let keyRow = 0
      let next = 0
      return {
        take: (memory) => {
          chromaLines = memory.take(2 * chromaLineBytes)
          keyRow = memory.take(width * 4 + SLACK)
          pairs = memory.take((most + ROW_COLOURS) * SLOT_BYTES)
        },
        begin: () => {
          applySettings(module, { chromaLines, chromaLineBytes, keyRow })
          if (!shape) beginShape(finestShape(layout, depth, range))
        },
        onBand: (_, { first, end }) => {
          for (let y = Math.max(first, next); y < end; y++) {
            const span = spans[y]
            if (span && span.first < span.end) module.countColours(y, span.first, span.end)
            while (shape && module.censusColours() > most) shrink(shape)
          }
          next = Math.max(next, end)
        },
      }
    },
    tally: () => {
      if (!shape) return undefined
      const all = read()
      const count = all.length / 2
      return {
        shape,
        keys: Uint32Array.from({ length: count }, (_, i) => all[2 * i] as number),
        counts: Uint32Array.from({ length: count }, (_, i) => all[2 * i + 1] as number),
      }
    },
  }
}
