import { assert } from '../core/base/assert.ts'
import { IDENTITY_GRADE } from '../core/colour/grade.ts'
import { isPlainBase, isPlainFilm } from '../core/film/filmBase.ts'
import { filterWidths } from '../core/picture/cubicTaps.ts'
import {
  type FramingMap,
  framingMap,
  IDENTITY_FRAMING,
  isUpright,
  sameFraming,
} from '../core/picture/framing.ts'
import { chromaHeight, chromaWidth, type Planes, type Samples } from '../core/picture/planes.ts'
import { copySamples } from './copySamples.ts'
import { framingTables, tapsOf } from './framingTables.ts'
import { gradeAfterBase, gradeSettings } from './gradeSettings.ts'
import type { KernelInput } from './kernel.ts'
import type { KernelMemory } from './kernelMemory.ts'
import { applySettings, type KernelModule, type Settings } from './kernelModule.ts'
import type { KernelState } from './kernelState.ts'
import { bandsOf, chromaRowsOf, type RowRange, sourceRows } from './sourceRows.ts'
import { framedBytes, writeFraming } from './writeFraming.ts'

/** Before each row and after it, for the repeated ends and whole vectors. */
const MARGIN = 64
/** Samples of a plane in a band: what a band reads and writes should stay in the cache. */
const BAND_SAMPLES = 32768

/** A frame laid out in kernel memory, band by band. */
export type PictureStage = {
  /** Delivered rows to be run in turn. */
  readonly bands: readonly RowRange[]
  /** Takes memory for more row buffers (`assembly/rasterSettings.ts`), and tells where the first is. */
  readonly takeRows: (count: number) => number
  /** To be called once the memory is settled: tables and settings. */
  begin(buffer: ArrayBuffer): void
  /** Copies in the samples that a band is made from, and tells which scanned rows those are. */
  load(buffer: ArrayBuffer, band: RowRange): RowRange
}

const LAYOUTS = { '420': 0, '422': 0, '444': 1, rgb: 2 } as const

const planeSizes = ({ layout, width, height }: Planes) => {
  const chroma = { columns: chromaWidth(layout, width), rows: chromaHeight(layout, height) }
  return [{ columns: width, rows: height }, chroma, chroma] as const
}

const checkPlanes = (planes: Planes): void => {
  const sizes = planeSizes(planes)
  const bytes = planes.depth > 8 ? 2 : 1
  for (const [i, samples] of planes.samples.entries()) {
    const size = sizes[i]
    assert(
      samples.length === (size?.columns ?? 0) * (size?.rows ?? 0) &&
        samples.BYTES_PER_ELEMENT === bytes,
      `plane ${i} does not hold the samples its picture states`,
    )
  }
}

const turnSettings = (map: FramingMap): Settings => {
  const { across, down } = filterWidths(map)
  return {
    turnXX: map.xx,
    turnXY: map.xy,
    turnYX: map.yx,
    turnYY: map.yy,
    turnX: map.offsetX,
    turnY: map.offsetY,
    openLeft: map.open.left,
    openRight: map.open.right,
    openTop: map.open.top,
    openBottom: map.open.bottom,
    widthAcross: across,
    widthDown: down,
    tapsAcross: tapsOf(across),
    tapsDown: tapsOf(down),
  }
}

/** Takes the memory for a frame's rows and sets up the stages from file samples to delivery. */
export const pictureStage = (
  module: KernelModule,
  memory: KernelMemory,
  { powers, bases, lists, codes }: Pick<KernelState, 'powers' | 'bases' | 'lists' | 'codes'>,
  { planes, coding, grade, framing }: KernelInput,
): PictureStage => {
  const { width, height, layout, samples } = planes
  const base = coding.base && !isPlainBase(coding.base) ? coding.base : undefined
  checkPlanes(planes)
  const map = sameFraming(framing, IDENTITY_FRAMING)
    ? undefined
    : framingMap(framing, width, height, coding.pixelAspect)
  const turned = map && !isUpright(map) ? map : undefined
  const framed = map && !turned ? framingTables(map, width, height) : undefined
  const bands = bandsOf(height, Math.max(1, Math.floor(BAND_SAMPLES / Math.max(1, width))))
  const rowsOf = (band: RowRange): RowRange =>
    turned ? { first: 0, end: height } : sourceRows(band, framed?.rows, height)
  const most = Math.max(0, ...bands.map(rowsOf).map(({ first, end }) => end - first))
  const sampleBytes = samples[0].BYTES_PER_ELEMENT
  const sizes = planeSizes(planes)
  const addresses = sizes.map(({ columns }) => memory.take((most + 3) * columns * sampleBytes))
  const tapsAcross = framed?.columns.taps ?? 0
  const tapsDown = framed?.rows.taps ?? 0
  const rowBytes = Math.ceil(Math.max(width, tapsAcross) / 16) * 64 + 2 * MARGIN
  const takeRows = (count: number) => memory.take(count * 3 * rowBytes) + MARGIN
  const chromaRow = takeRows(1)
  const gradedCount = Math.max(1, tapsDown)
  const gradedRows = takeRows(gradedCount)
  const mixedRow = takeRows(1)
  const framedRow = takeRows(1)
  const filteredRows = takeRows(3)
  const tableColumns = framed ? Math.ceil(width / 16) * 16 : 0
  const tables = {
    columnOffsets: memory.take(tableColumns * 4),
    columnWeights: memory.take(tableColumns * tapsAcross * 4),
    rowFirsts: memory.take(framed ? height * 4 : 0),
    rowWeights: memory.take(height * tapsDown * 4),
  }
  const turnedRows = takeRows(turned ? height : 0)
  const program = base?.list ? lists.of(base.list) : undefined
  const processAt = program ? memory.take(program.length) : 0
  return {
    bands,
    takeRows,
    begin: (buffer) => {
      const [powerOfR, powerOfG, powerOfB] = powers.addresses(grade.gamma)
      applySettings(module, {
        ...gradeSettings(planes, coding, base ? IDENTITY_GRADE : grade),
        hasBase: base !== undefined,
        hasFilm: base !== undefined && !isPlainFilm(base),
        processAt,
        ...(base
          ? { ...bases.settings(base), ...gradeAfterBase(grade) }
          : codes.settings(planes, coding.range, grade)),
        width,
        height,
        layout: LAYOUTS[layout],
        isHalfHeight: layout === '420',
        sampleBytes,
        chromaColumns: sizes[1].columns,
        chromaRows: sizes[1].rows,
        rowBytes,
        chromaRow,
        gradedRows,
        gradedCount,
        mixedRow,
        framedRow,
        filteredRows,
        isFramed: map !== undefined,
        isTurned: turned !== undefined,
        turnedRows,
        ...(turned && turnSettings(turned)),
        ...(framed && { tapsAcross, tapsDown, ...tables, ...framedBytes(framed.columns) }),
        powerOfR,
        powerOfG,
        powerOfB,
      })
      if (framed) {
        // What no row is mixed into is read by weights of 0; what no column shows stays black.
        for (const row of [mixedRow, framedRow])
          new Uint8Array(buffer, row - MARGIN, 3 * rowBytes).fill(0)
        writeFraming(buffer, framed, tables)
      }
      if (program) new Uint8Array(buffer, processAt).set(program)
      module.beginPicture()
    },
    load: (buffer, band) => {
      // All of a turned picture is graded before the first of its bands.
      if (turned && band.first > 0) return { first: 0, end: 0 }
      const rows = rowsOf(band)
      const chroma = layout === '420' ? chromaRowsOf(rows, sizes[1].rows) : rows
      const firsts = [rows, chroma, chroma].map(({ first, end }, i) => {
        const pitch = sizes[i]?.columns ?? 0
        copySamples(buffer, addresses[i] ?? 0, samples[i] as Samples, first * pitch, end * pitch)
        return (addresses[i] ?? 0) - first * pitch * sampleBytes
      })
      applySettings(module, {
        firstPlane: firsts[0] ?? 0,
        secondPlane: firsts[1] ?? 0,
        thirdPlane: firsts[2] ?? 0,
      })
      if (turned) module.gradeAll()
      return rows
    },
  }
}
