import { SATURATION_WEIGHTS } from '../core/colour/grade.ts'
import { type CellMeans, cellEdges } from '../core/flashes/cellMeans.ts'
import type { BandWork } from './bandWork.ts'
import { applySettings, type KernelModule } from './kernelModule.ts'

/** For none to three of four lanes. */
const LANE_MASKS = Int32Array.from({ length: 16 }, (_, i) => (i % 4 < Math.floor(i / 4) ? -1 : 0))

/** Sums cells on the way, and writes their means once all bands are done. */
export type CellSums = BandWork & { readonly write: () => void }

/**
 * The cells of a picture, summed before saturation: as that is linear, it is given to the means.
 */
export const cellSums = (module: KernelModule, saturation: number, into: CellMeans): CellSums => {
  const { columns, rows, width, height, pixels } = into
  const count = columns * rows
  const addresses = { cellStarts: 0, cellRowEnds: 0, cellLanes: 0, laneMasks: 0, cellSums: 0 }
  let sums = new Float32Array(0)
  return {
    take: (memory) => {
      addresses.cellStarts = memory.take((columns + 1) * 4)
      addresses.cellRowEnds = memory.take(rows * 4)
      addresses.cellLanes = memory.take(columns * 48)
      addresses.laneMasks = memory.take(64)
      addresses.cellSums = memory.take(3 * count * 4)
    },
    begin: (buffer) => {
      const starts = new Int32Array(buffer, addresses.cellStarts, columns + 1)
      starts.set(cellEdges(width, columns).map((edge) => edge * 4))
      new Int32Array(buffer, addresses.cellRowEnds, rows).set(cellEdges(height, rows).subarray(1))
      new Int32Array(buffer, addresses.laneMasks, 16).set(LANE_MASKS)
      sums = new Float32Array(buffer, addresses.cellSums, 3 * count)
      applySettings(module, { ...addresses, cellColumns: columns, cellCount: count })
    },
    onBand: () => undefined,
    write: () => {
      const [wr, wg, wb] = SATURATION_WEIGHTS
      for (let i = 0; i < count; i++) {
        const area = pixels[i] as number
        const r = (sums[i] as number) / area
        const g = (sums[count + i] as number) / area
        const b = (sums[2 * count + i] as number) / area
        const grey = (1 - saturation) * (wr * r + wg * g + wb * b)
        into.r[i] = saturation * r + grey
        into.g[i] = saturation * g + grey
        into.b[i] = saturation * b + grey
      }
    },
  }
}
