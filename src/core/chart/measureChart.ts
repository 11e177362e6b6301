import { fail, ok, type Result } from '../base/result.ts'
import { type AfterglowWish, afterglow, type LineProfile } from '../lineup/afterglow.ts'
import type { RgbPicture } from '../picture/rgbPicture.ts'
import {
  type ChartGeometry,
  type Corners,
  chartGeometry,
  markIn,
  type Place,
} from './chartMarks.ts'
import { fineLines } from './fineLines.ts'
import { patchLevels } from './patchLevels.ts'
import { type Channel, checkRegion, columnMeans, type Region, regionValues } from './region.ts'
import { slantedEdge } from './slantedEdge.ts'

/** What can be measured on a picture of a chart. */
export const CHART_KINDS = ['levels', 'edge', 'lines', 'geometry', 'streak'] as const
export type ChartKind = (typeof CHART_KINDS)[number]

/** One number that was measured. */
export type Measured = {
  readonly what: string
  readonly value: number
  readonly unit: string
  /** Decimals it is worth. */
  readonly decimals: number
}

const row = (what: string, value: number, unit: string, decimals: number): Measured => ({
  ...{ what, value, unit, decimals },
})

/** Pixels a side of a region, at least. */
const LEAST_SIDE = 8

/** Levels along a line, as captured: one channel of it. */
export type NamedProfile = LineProfile & {
  readonly name: string
  /** Of its places, as the first row names it. */
  readonly unit: string
}

const CHANNELS: readonly { readonly channel: Channel; readonly name: string }[] = [
  { channel: 'r', name: 'Red' },
  { channel: 'g', name: 'Green' },
  { channel: 'b', name: 'Blue' },
]

const levels = (picture: RgbPicture, region: Region): Result<readonly Measured[]> => {
  const { mean, deviation, redLessGreen, blueLessGreen, shading } = patchLevels(picture, region)
  return ok([
    row('Green', mean[1], 'mV', 1),
    row('Red less green', redLessGreen, 'mV', 1),
    row('Blue less green', blueLessGreen, 'mV', 1),
    row('Deviation of green', deviation[1], 'mV', 2),
    row('Shading of green', shading, 'mV', 1),
  ])
}

/** Frequencies at which a response is told, in cycles a pixel. */
const TOLD = [0.125, 0.25, 0.375, 0.5] as const

const edge = (picture: RgbPicture, region: Region): Result<readonly Measured[]> => {
  const found = slantedEdge(regionValues(picture, region, 'g'))
  if (!found.ok) return found
  const { frequency, mtf, half, angle } = found.value
  return ok([
    ...(half === undefined ? [] : [row('Half response at', half, 'cycles a pixel', 3)]),
    ...TOLD.map((each) => {
      const at = frequency.findIndex((value) => value >= each - 1e-9)
      return row(`Response at ${each} cycles a pixel`, 100 * (mtf[at] ?? 0), '%', 1)
    }),
    row('The edge leans by', angle, '°', 2),
  ])
}

const lines = (picture: RgbPicture, region: Region): Result<readonly Measured[]> => {
  const found = fineLines(regionValues(picture, region, 'g'))
  if (!found.ok) return found
  const { frequency, amplitude, part } = found.value
  return ok([
    row('Lines at', frequency, 'cycles a pixel', 4),
    row('Peak to peak', 700 * amplitude, 'mV', 1),
    row('Of lines from black to peak white', 100 * part, '%', 1),
  ])
}

const geometryRows = (found: ChartGeometry): readonly Measured[] => [
  row('Width', found.width, 'pixels', 2),
  row('Height', found.height, 'pixels', 2),
  row('Middle, from the left', found.middle.x, 'pixels', 2),
  row('Middle, from the top', found.middle.y, 'pixels', 2),
  row('Rotation', found.rotation, '°', 3),
  row('Top wider than bottom by', 100 * found.keystone, '%', 2),
  row('Right higher than left by', 100 * found.keystoneAcross, '%', 2),
  row('Skew', found.skew, '°', 3),
]

const markAt = (picture: RgbPicture, region: Region): Result<Place> => {
  const found = markIn(regionValues(picture, region, 'g'))
  return found.ok ? ok({ x: found.value.x + region.x, y: found.value.y + region.y }) : found
}

/** The corners in their order, whatever order they were given in. */
const inOrder = (places: readonly Place[]): Corners => {
  const byHeight = places.toSorted((a, b) => a.y - b.y)
  const [topLeft, topRight] = byHeight.slice(0, 2).toSorted((a, b) => a.x - b.x)
  const [bottomLeft, bottomRight] = byHeight.slice(2, 4).toSorted((a, b) => a.x - b.x)
  if (!topLeft || !topRight || !bottomLeft || !bottomRight)
    throw new Error('Bug: geometry is told by four marks')
  return [topLeft, topRight, bottomRight, bottomLeft]
}

const geometry = (picture: RgbPicture, regions: readonly Region[]): Result<readonly Measured[]> => {
  const places: Place[] = []
  for (const region of regions) {
    const mark = markAt(picture, region)
    if (!mark.ok) return mark
    places.push(mark.value)
  }
  return ok(geometryRows(chartGeometry(inOrder(places))))
}

/** What the afterglow of one channel comes to; `unit` is that of its places. */
const streakRows = (
  name: string,
  profile: LineProfile,
  unit: string,
  wish: AfterglowWish,
): Result<readonly Measured[]> => {
  const found = afterglow(profile, wish)
  if (!found.ok) return found
  const { terms, settings, before, after } = found.value
  const { correctors = terms.map(({ constant }) => constant) } = wish
  return ok([
    ...terms.flatMap(({ constant, part }, k) => [
      row(`${name}, time constant ${k + 1}`, constant, unit, 3),
      row(`${name}, its part of the step`, 100 * part, '%', 2),
    ]),
    ...settings.map((setting, k) =>
      row(
        `${name}, corrector of ${Number((correctors[k] ?? 0).toPrecision(3))} ${unit} to act by`,
        100 * setting,
        '%',
        2,
      ),
    ),
    row(`${name}, streak now`, 100 * before.most, '%', 2),
    row(`${name}, streak then`, 100 * after.most, '%', 2),
  ])
}

const streak = (
  picture: RgbPicture,
  region: Region,
  wish: AfterglowWish,
): Result<readonly Measured[]> => {
  const profiles = CHANNELS.map(({ channel, name }) => {
    const y = [...columnMeans(regionValues(picture, region, channel))]
    return { name, unit: 'pixels', x: y.map((_, i) => i), y }
  })
  return measureProfiles(profiles, wish)
}

/** The streak in each of captured line profiles. */
export const measureProfiles = (
  profiles: readonly NamedProfile[],
  wish: AfterglowWish,
): Result<readonly Measured[]> => {
  const rows: Measured[] = []
  for (const { name, unit, ...profile } of profiles) {
    const found = streakRows(name, profile, unit, wish)
    if (!found.ok) return found
    rows.push(...found.value)
  }
  return ok(rows)
}

/** How many regions each kind is measured in. */
export const REGIONS_OF: Readonly<Record<ChartKind, number>> = {
  ...{ levels: 1, edge: 1, lines: 1, geometry: 4, streak: 1 },
}

/**
 * Measures a picture of a chart in regions of it: as many as `REGIONS_OF` says. Geometry is told by
 * a mark in each of four.
 */
export const measureChart = (
  picture: RgbPicture,
  kind: ChartKind,
  regions: readonly Region[],
  wish: AfterglowWish = {},
): Result<readonly Measured[]> => {
  for (const region of regions) {
    const checked = checkRegion(picture, region, LEAST_SIDE)
    if (!checked.ok) return fail(...checked.problems)
  }
  const [first] = regions
  if (!first || regions.length !== REGIONS_OF[kind])
    throw new Error(`Bug: ${kind} is measured in ${REGIONS_OF[kind]} regions`)
  if (kind === 'geometry') return geometry(picture, regions)
  if (kind === 'streak') return streak(picture, first, wish)
  return { levels, edge, lines }[kind](picture, first)
}

/** A number as it is told, with its unit. */
export const measuredText = ({ value, unit, decimals }: Measured): string =>
  `${value.toFixed(decimals).replace('-', '−')}${unit === '°' ? '' : ' '}${unit}`
