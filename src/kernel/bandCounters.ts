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
  /** A copy of the counts, in `into` where it has their size. */
  counts(into?: Uint32Array<ArrayBuffer>): Uint32Array<ArrayBuffer>
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
    counts: (into) => {
      if (into?.length !== size) return counts.slice()
      into.set(counts)
      return into
    },
  }
}

/** The most that a counter of the waveform holds before it is moved on. */
const MOST_COUNTED = 65_535

/** Levels in each of `columns` equal parts of the width, of the plane of codes at `plane()`. */
export const columnCounters = (
  module: KernelModule,
  plane: () => number,
  width: number,
  columns: number,
): BandCounters => {
  const size = columns * LEVELS
  const mostRows = Math.floor(MOST_COUNTED / Math.ceil(width / columns))
  let starts = 0
  let short = 0
  let counted = 0
  const sums = counters(
    size,
    (address, rows) => {
      if (counted + rows > mostRows) move(address)
      module.countWaveform(plane(), width, rows, starts)
      counted += rows
    },
    (_, buffer) => {
      new Uint16Array(buffer, short, size).fill(0)
      counted = 0
      new Uint32Array(buffer, starts, width).forEach((__, x, addresses) => {
        addresses[x] = short + Math.floor((x * columns) / width) * LEVELS * 2
      })
    },
  )
  const move = (address: number): void => {
    module.moveCounts(short, address, size)
    counted = 0
  }
  return {
    ...sums,
    take: (memory) => {
      starts = memory.take(width * 4)
      short = memory.take(size * 2)
      sums.take(memory)
    },
    counts: (into) => {
      move(sums.address())
      return sums.counts(into)
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
