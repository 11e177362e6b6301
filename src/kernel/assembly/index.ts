/**
 * The WebAssembly module: what the TypeScript side sets (globals), calls (functions) and reads
 * (memory). It allocates nothing: the caller lays out the memory from `heapBase` up.
 */

export * from './baseSettings'
export { findEnds } from './censusEnds'
export { countOutside, pixelsNotInside, pixelsOutside } from './censusQuery'
export * from './censusQuerySettings'
export * from './censusSettings'
export * from './cellSettings'
export { countColours } from './censusRow'
export { addCounts, censusColours, clearCensus, writeCounts } from './censusTable'
export * from './codeSettings'
export { countLevelPairs, sumLevelPairs } from './countLevelPairs'
export { countVectorscope } from './countVectorscope'
export { countWaveform, moveCounts } from './countWaveform'
export { deliverBand } from './deliverBand'
export { beginPicture } from './deliveredRow'
export * from './gradeSettings'
export { layBand } from './layBand'
export * from './laySettings'
export * from './levelSettings'
export * from './limitSettings'
export { measureBand } from './measureBand'
export * from './rasterSettings'
export { gradeAll } from './turnedRow'

/** The first byte of memory that is free for the caller. */
export function heapBase(): usize {
  return __heap_base
}
