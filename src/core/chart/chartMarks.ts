import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import type { RegionValues } from './region.ts'

/** A place on a picture in pixels, from the middle of its first one. */
export type Place = { readonly x: number; readonly y: number }

/** A mark differs from what is around it by this part of signal, at least. */
const LEAST_CONTRAST = 0.1

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? 0
}

/** The values along the border of a region. */
const border = ({ width, height, values }: RegionValues): readonly number[] =>
  [...values].filter((_, i) => {
    const [x, y] = [i % width, Math.floor(i / width)]
    return x === 0 || y === 0 || x === width - 1 || y === height - 1
  })

/**
 * The middle of one mark that stands alone in a region, lighter or darker than what is around it:
 * the centroid of what differs by more than half of the most. In pixels of the region.
 */
export const markIn = (region: RegionValues): Result<Place> => {
  const ground = median(border(region))
  const most = region.values.reduce((far, value) => Math.max(far, Math.abs(value - ground)), 0)
  if (most < LEAST_CONTRAST)
    return fail(problem('not-found', 'There is no mark in the region; mark one out closely.'))
  let sum = 0
  let x = 0
  let y = 0
  for (const [i, value] of region.values.entries()) {
    const weight = Math.max(0, Math.abs(value - ground) - most / 2)
    sum += weight
    x += weight * (i % region.width)
    y += weight * Math.floor(i / region.width)
  }
  return ok({ x: x / sum, y: y / sum })
}

/** How a picture lies and what shape it has, by four marks of a chart. */
export type ChartGeometry = {
  /** Means of top and bottom, left and right, in pixels. */
  readonly width: number
  readonly height: number
  readonly middle: Place
  /** Degrees clockwise. */
  readonly rotation: number
  /** Parts by which the top is wider than the bottom, and the right higher than the left. */
  readonly keystone: number
  readonly keystoneAcross: number
  /** Degrees by which upright lines lean more than level ones are turned. */
  readonly skew: number
}

/** Corners of a chart: top left, top right, bottom right, bottom left. */
export type Corners = readonly [Place, Place, Place, Place]

const between = (a: Place, b: Place) => ({
  length: Math.hypot(b.x - a.x, b.y - a.y),
  turn: Math.atan2(b.y - a.y, b.x - a.x) * (180 / Math.PI),
})

/** What four marks at the corners of a rectangle tell of the picture they are on. */
export const chartGeometry = ([
  topLeft,
  topRight,
  bottomRight,
  bottomLeft,
]: Corners): ChartGeometry => {
  const [top, bottom] = [between(topLeft, topRight), between(bottomLeft, bottomRight)]
  const [left, right] = [between(topLeft, bottomLeft), between(topRight, bottomRight)]
  const width = (top.length + bottom.length) / 2
  const height = (left.length + right.length) / 2
  const level = (top.turn + bottom.turn) / 2
  const upright = (left.turn + right.turn) / 2 - 90
  const corners = [topLeft, topRight, bottomRight, bottomLeft]
  const mean = (of: (place: Place) => number) =>
    corners.reduce((sum, place) => sum + of(place), 0) / corners.length
  return {
    ...{ width, height, middle: { x: mean(({ x }) => x), y: mean(({ y }) => y) } },
    rotation: (level + upright) / 2,
    keystone: (top.length - bottom.length) / width,
    keystoneAcross: (right.length - left.length) / height,
    skew: upright - level,
  }
}
