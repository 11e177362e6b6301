import { type Coding, chromaHeight, chromaWidth, type Planes, type Samples } from './planes.ts'

/** Lines 0, 1, 4, 5, 8, 9… of a plane; `step` 2: lines 0, 2, 4… which belong to those pairs. */
const keepLines = (samples: Samples, columns: number, rows: number, step: 1 | 2): Samples => {
  const isKept = (row: number): boolean => (step === 1 ? row % 4 < 2 : row % 2 === 0)
  const kept = Array.from({ length: rows }, (_, row) => row).filter(isKept)
  const out =
    samples instanceof Uint16Array
      ? new Uint16Array(kept.length * columns)
      : new Uint8Array(kept.length * columns)
  for (const [to, row] of kept.entries())
    out.set(samples.subarray(row * columns, (row + 1) * columns), to * columns)
  return out
}

/**
 * A picture of every second pair of lines, so that it is measured in half the time: lines 0 and 1,
 * 4 and 5, and so on. Of 4:2:0 a pair keeps the chroma line that is sited between its lines.
 */
export const everySecondPair = (planes: Planes): Planes => {
  const { width, height, layout, samples } = planes
  const columns = chromaWidth(layout, width)
  const chroma = (plane: Samples): Samples =>
    keepLines(plane, columns, chromaHeight(layout, height), layout === '420' ? 2 : 1)
  const luma = keepLines(samples[0], width, height, 1)
  return {
    ...planes,
    height: luma.length / width,
    samples: [luma, chroma(samples[1]), chroma(samples[2])],
  }
}

/** How such a picture is read: its pixels are about twice as tall, so that its shape is the same. */
export const secondPairCoding = (coding: Coding, whole: Planes, kept: Planes): Coding => ({
  ...coding,
  pixelAspect: ((coding.pixelAspect ?? 1) * kept.height) / whole.height,
})
