import { OUTSIDE, type Places } from './framingTables.ts'

/**
 * The tables of a framed picture in kernel memory (see `assembly/rasterSettings.ts`). `outside` is
 * where zeros lie, in bytes from a row's address.
 */
export const writeFraming = (
  buffer: ArrayBuffer,
  { columns, rows }: { readonly columns: Places; readonly rows: Places },
  at: {
    readonly offsets: number
    readonly fractions: number
    readonly rows: number
    readonly outside: number
  },
): void => {
  const offsets = new Int32Array(buffer, at.offsets, columns.before.length)
  columns.before.forEach((before, x) => {
    offsets[x] = before === OUTSIDE ? at.outside : before * 4
  })
  new Float32Array(buffer, at.fractions, columns.part.length).set(columns.part)
  const rowPlaces = new DataView(buffer, at.rows, rows.before.length * 16)
  const last = rows.before.length - 1
  rows.before.forEach((before, y) => {
    const isOutside = before === OUTSIDE
    rowPlaces.setInt32(y * 16, isOutside ? -1 : Math.max(before, 0), true)
    rowPlaces.setInt32(y * 16 + 4, isOutside ? -1 : Math.min(before + 1, last), true)
    rowPlaces.setFloat32(y * 16 + 8, rows.part[y] ?? 0, true)
  })
}
