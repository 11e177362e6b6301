import type { KernelMemory } from './kernelMemory.ts'
import type { RowRange } from './sourceRows.ts'

/** Something done on the rows of a picture, band by band, while they are at hand. */
export type BandWork = {
  /** Takes its memory; a band has at most `mostRows` rows. */
  take(memory: KernelMemory, mostRows: number): void
  /** Once the memory is settled: clears counters, applies settings. */
  begin(buffer: ArrayBuffer): void
  /** After each band: its delivered rows, and the scanned rows that are loaded. */
  onBand(delivered: RowRange, scanned: RowRange): void
}
