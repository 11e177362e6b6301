import type { KernelMemory } from './kernelMemory.ts'
import type { KernelModule } from './kernelModule.ts'

/** Levels of an instrument: four 10-bit codes to each. */
export const LEVELS = 256

/** Counters in kernel memory that each band of a picture is added to. */
export type BandCounters = {
  take(memory: KernelMemory): void
  /** Clears them. */
  begin(buffer: ArrayBuffer): void
  /** Adds `rows` rows of codes. */
  add(rows: number): void
  /** A copy of the counts. */
  counts(): Uint32Array<ArrayBuffer>
}

/** `size` counters that `count` adds to, given their address. */
const counters = (
  size: number,
  count: (address: number, rows: number) => void,
  atBegin: (address: number, buffer: ArrayBuffer) => void = () => undefined,
): BandCounters & { readonly address: () => number } => {
  let address = 0
  let counts = new Uint32Array(size)
  return {
    address: () => address,
    take: (memory) => {
      address = memory.take(size * 4)
    },
    begin: (buffer) => {
      counts = new Uint32Array(buffer, address, size).fill(0)
      atBegin(address, buffer)
    },
    add: (rows) => count(address, rows),
    counts: () => counts.slice(),
  }
}

/** Levels in each of `columns` equal parts of the width, of the plane of codes at `plane()`. */
export const columnCounters = (
  module: KernelModule,
  plane: () => number,
  width: number,
  columns: number,
): BandCounters => {
  let starts = 0
  const counted = counters(
    columns * LEVELS,
    (_, rows) => module.countWaveform(plane(), width, rows, starts),
    (address, buffer) => {
      const starting = new Uint32Array(buffer, starts, width)
      for (let x = 0; x < width; x++)
        starting[x] = address + Math.floor((x * columns) / width) * LEVELS * 4
    },
  )
  return {
    ...counted,
    take: (memory) => {
      starts = memory.take(width * 4)
      counted.take(memory)
    },
  }
}

/** Pairs of colour differences, size×size, Cb left to right and Cr upwards. */
export const vectorscopeCounters = (
  module: KernelModule,
  planes: { readonly cb: () => number; readonly cr: () => number },
  width: number,
  size: number,
): BandCounters =>
  counters(size * size, (address, rows) =>
    module.countVectorscope(planes.cb(), planes.cr(), rows * width, size, address),
  )

/** Levels of two planes of codes over the whole picture, one plane's after the other's. */
export const levelPairCounters = (
  module: KernelModule,
  first: () => number,
  second: () => number,
  width: number,
): BandCounters => {
  let pairs = 0
  const sums = counters(
    2 * LEVELS,
    (_, rows) => module.countLevelPairs(first(), second(), rows * width, pairs),
    (_, buffer) => new Uint32Array(buffer, pairs, LEVELS * LEVELS).fill(0),
  )
  return {
    ...sums,
    take: (memory) => {
      pairs = memory.take(LEVELS * LEVELS * 4)
      sums.take(memory)
    },
    counts: () => {
      module.sumLevelPairs(pairs, sums.address(), sums.address() + LEVELS * 4)
      return sums.counts()
    },
  }
}
