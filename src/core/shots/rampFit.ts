/** A value that stays, then runs along a straight line, then stays again. */
export type Ramp = {
  /** Last place of the first level and first place of the second one. */
  readonly from: number
  readonly to: number
  /** Root of the mean squared distance of the points, as part of the rise. */
  readonly error: number
}

export type WeightedPoint = { readonly x: number; readonly y: number; readonly weight: number }

/** The second level is at least this far above the first. */
const LEAST_RISE = 0.3

/** Fewer points than this are met by some ramp whatever they are. */
const LEAST_POINTS = 5

/** Running sums over the points, to get those of any stretch at once. */
const SUMS = 6
const [W, WX, WXX, WY, WXY, WYY] = [0, 1, 2, 3, 4, 5] as const

const runningSums = (points: readonly WeightedPoint[], origin: number): Float64Array => {
  const sums = new Float64Array((points.length + 1) * SUMS)
  points.forEach((point, i) => {
    const { y, weight } = point
    const x = point.x - origin
    const values = [weight, weight * x, weight * x * x, weight * y, weight * x * y, weight * y * y]
    values.forEach((value, k) => {
      sums[(i + 1) * SUMS + k] = (sums[i * SUMS + k] as number) + value
    })
  })
  return sums
}

/**
 * The ramp nearest to points in order of x, by least squares with both levels free, at most
 * `longest` between its corners, which are at whole places. Undefined where nothing rises.
 */
export const rampFit = (points: readonly WeightedPoint[], longest: number): Ramp | undefined => {
  const all = points.length
  if (all < LEAST_POINTS) return undefined
  const origin = points[0]?.x ?? 0
  const end = (points.at(-1)?.x ?? 0) - origin
  const sums = runningSums(points, origin)
  const sum = (k: number, from: number, to: number): number =>
    (sums[to * SUMS + k] as number) - (sums[from * SUMS + k] as number)
  /** How many points lie at or before a place. */
  const upTo = new Int32Array(end + 1)
  for (let x = 0, k = 0; x <= end; x++) {
    while (k < all && (points[k]?.x ?? 0) - origin <= x) k++
    upTo[x] = k
  }
  const [w, sy, yy] = [sum(W, 0, all), sum(WY, 0, all), sum(WYY, 0, all)]
  let best: Ramp | undefined
  for (let from = 0; from < end; from++)
    for (let to = from + 2; to <= Math.min(end, from + longest); to++) {
      const i = upTo[from] as number
      const j = upTo[to - 1] as number
      const length = to - from
      const inside = sum(W, i, j)
      const after = sum(W, j, all)
      const x = sum(WX, i, j) - from * inside
      const xx = sum(WXX, i, j) - 2 * from * sum(WX, i, j) + from * from * inside
      const t = x / length + after
      const tt = xx / (length * length) + after
      const ty = (sum(WXY, i, j) - from * sum(WY, i, j)) / length + sum(WY, j, all)
      const spread = tt - (t * t) / w
      if (spread <= 1e-9) continue
      const rise = (ty - (t * sy) / w) / spread
      if (rise < LEAST_RISE) continue
      const left = yy - (sy * sy) / w - rise * rise * spread
      const error = Math.sqrt(Math.max(0, left) / w) / Math.min(1, rise)
      if (!best || error < best.error) best = { from: from + origin, to: to + origin, error }
    }
  return best
}
