import type { Grade } from '../../src/core/colour/grade.ts'

/** The grade that the rows are timed with: that of the ffmpeg chain they are held against. */
export const BENCH_GRADE: Grade = {
  lift: [0.02, 0.01, 0.03],
  gamma: [1.15, 1.1, 1.2],
  gain: [1.1, 1.05, 1.02],
  saturation: 1.2,
}
