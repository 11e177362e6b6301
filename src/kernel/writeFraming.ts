import { OUTSIDE, type Taps } from './framingTables.ts'
import type { Settings } from './kernelModule.ts'

/** The tables of a framed picture in kernel memory (see `assembly/rasterSettings.ts`). */
export const writeFraming = (
  buffer: ArrayBuffer,
  { columns, rows }: { readonly columns: Taps; readonly rows: Taps },
  at: {
    readonly columnOffsets: number
    readonly columnWeights: number
    readonly rowFirsts: number
    readonly rowWeights: number
  },
): void => {
  const padded = Math.ceil(columns.firsts.length / 4) * 4
  const offsets = new Int32Array(buffer, at.columnOffsets, padded).fill(0)
  columns.firsts.forEach((first, x) => {
    offsets[x] = first === OUTSIDE ? 0 : first * 4
  })
  const weights = new Float32Array(buffer, at.columnWeights, padded * columns.taps)
  weights.fill(0, columns.weights.length)
  weights.set(columns.weights)
  new Int32Array(buffer, at.rowFirsts, rows.firsts.length).set(rows.firsts)
  new Float32Array(buffer, at.rowWeights, rows.weights.length).set(rows.weights)
}

/** The bytes of a row that are read, and of a delivered one that are written: whole vectors. */
export const framedBytes = ({ firsts, taps }: Taps): Settings => {
  const from = firsts.findIndex((first) => first !== OUTSIDE)
  if (from < 0) return { mixedFrom: 0, mixedEnd: 0, framedFrom: 0, framedEnd: 0 }
  const last = firsts.findLastIndex((first) => first !== OUTSIDE)
  const seenEnd = Math.min((firsts[last] ?? 0) + taps, firsts.length)
  return {
    mixedFrom: ((firsts[from] ?? 0) >> 2) * 16,
    mixedEnd: Math.ceil(seenEnd / 4) * 16,
    framedFrom: (from >> 2) * 16,
    framedEnd: Math.ceil((last + 1) / 4) * 16,
  }
}
