import type { Planes } from '../../../src/core/picture/planes.ts'

/** Lossless clips: each row of luma has every code value, moved on by one with each picture. */
export const RAMP_CLIPS = [
  { file: 'ramp-8bit.webm', facts: { layout: '444', depth: 8, frames: 3, codec: 'VP9' } },
  { file: 'ramp-10bit.mp4', facts: { layout: '444', depth: 10, frames: 2, codec: 'H.264' } },
  { file: 'ramp-full-range.mp4', facts: { layout: '444', depth: 8, frames: 2, range: 'full' } },
] as const

/** Samples of a ramp picture that are not what was drawn, the first few of them. */
export const rampFaults = (planes: Planes, number: number): readonly string[] => {
  const { width, height, depth, samples } = planes
  const top = 2 ** depth - 1
  const faults: string[] = []
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const down = Math.round((y * top) / (height - 1))
      const drawn = [Math.round((((x + number) % width) * top) / (width - 1)), down, top - down]
      for (const [plane, value] of drawn.entries()) {
        const read = samples[plane]?.[y * width + x]
        if (read !== value && faults.length < 5)
          faults.push(`plane ${plane} at ${x},${y}: ${read}, drawn ${value}`)
      }
    }
  return faults
}
