import type { CellMeans } from '../core/flashes/cellMeans.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import type { Extremes, PictureLevels } from '../core/tolerance/pictureLevels.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { BandWork } from './bandWork.ts'
import { cellSums } from './cellSums.ts'
import type { KernelInput } from './kernel.ts'
import { applySettings } from './kernelModule.ts'
import type { KernelState } from './kernelState.ts'
import { filterSum, levelSettings } from './levelSettings.ts'
import { pictureStage } from './pictureStage.ts'

/** Low and high of R′, G′, B′, Y′ and composite, and three counts, four lanes each. */
const EXTREMES = 40
const COUNTS = 12

/**
 * The levels of a picture, and `works` done on its rows while they are at hand. `cells` are written
 * with the means of the delivered picture.
 */
export const measureLevels = (
  state: KernelState,
  input: KernelInput,
  matrix: MatrixName,
  profile: ToleranceProfile,
  otherWorks: readonly BandWork[] = [],
  cells?: CellMeans,
): PictureLevels => {
  const { module } = state
  const sums = cells && cellSums(module, input.grade.saturation, cells)
  const works = sums ? [...otherWorks, sums] : otherWorks
  const space = state.memory()
  const stage = pictureStage(module, space, state, input)
  const statistics = space.take((EXTREMES + COUNTS) * 4)
  const mostRows = Math.max(0, ...stage.bands.map(({ first, end }) => end - first))
  for (const work of works) work.take(space, mostRows)
  const buffer = space.settle()
  stage.begin(buffer)
  applySettings(module, {
    ...levelSettings(input.grade.saturation, matrix, profile),
    statistics,
    keepsCodes: false,
    cellColumns: 0,
  })
  for (const work of works) work.begin(buffer)
  const extremes = new Float32Array(buffer, statistics, EXTREMES)
  const counts = new Int32Array(buffer, statistics + EXTREMES * 4, COUNTS)
  extremes.forEach((_, i) => {
    extremes[i] = i % 8 < 4 ? Infinity : -Infinity
  })
  counts.fill(0)
  for (const band of stage.bands) {
    const source = stage.load(buffer, band)
    module.measureBand(band.first, band.end)
    for (const work of works) work.onBand(band, source)
  }
  sums?.write()
  const sum = filterSum(profile)
  const extremesOf = (channel: number): Extremes => ({
    low: Math.min(...extremes.subarray(channel * 8, channel * 8 + 4)) / sum,
    high: Math.max(...extremes.subarray(channel * 8 + 4, channel * 8 + 8)) / sum,
  })
  const countOf = (i: number): number =>
    counts.subarray(i * 4, i * 4 + 4).reduce((total, lane) => total + lane, 0)
  return {
    r: extremesOf(0),
    g: extremesOf(1),
    b: extremesOf(2),
    y: extremesOf(3),
    ...(profile.composite && { composite: extremesOf(4) }),
    below: countOf(0),
    above: countOf(1),
    outside: countOf(2),
    pixels: input.planes.width * input.planes.height,
  }
}
