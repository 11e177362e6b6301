import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { type RegionValues, turned } from './region.ts'

/** Response by spatial frequency, in cycles a pixel across the edge. */
export type EdgeResponse = {
  /** Rising from 0 to 0.5 and past it. */
  readonly frequency: readonly number[]
  /** 1 at 0. */
  readonly mtf: readonly number[]
  /** The frequency at which the response falls to a half; undefined where it does not by 0.5. */
  readonly half: number | undefined
  /** Degrees by which the edge leans from the vertical, or from the horizontal. */
  readonly angle: number
  readonly isHorizontal: boolean
}

/** Places a pixel is divided into across the edge (ISO 12233:2017, annex D: 4). */
const TIMES = 4

/** An edge leans more than the one, or rows say all the same, and less than the other. */
const LEAST_DEGREES = 1
const MOST_DEGREES = 25

/** The step of an edge, as signal, at least. */
const LEAST_STEP = 0.05

/** Rows of an edge, at least: fewer do not fill the places between pixels. */
const LEAST_ROWS = 20

/** Pixels to each side of the edge, at least and at most. */
const LEAST_SIDE = 8
const MOST_SIDE = 64

/** Where the edge of a row lies: the centroid of its differences, near where it was looked for. */
const edgeOfRow = (row: Float64Array, near: number | undefined): number => {
  const reach = near === undefined ? row.length : Math.max(6, row.length / 5)
  let sum = 0
  let moment = 0
  for (let x = 1; x < row.length; x++) {
    const at = x - 0.5
    if (near !== undefined && Math.abs(at - near) > reach) continue
    const window = near === undefined ? 1 : 0.54 + 0.46 * Math.cos((Math.PI * (at - near)) / reach)
    const slope = ((row[x] ?? 0) - (row[x - 1] ?? 0)) * window
    sum += slope
    moment += slope * at
  }
  return moment / sum
}

type Line = { readonly at: number; readonly slope: number }

/** x = at + slope·y through the edges of rows, by least squares. */
const lineThrough = (edges: readonly number[]): Line => {
  const count = edges.length
  const middle = (count - 1) / 2
  const mean = edges.reduce((sum, x) => sum + x, 0) / count
  let above = 0
  let below = 0
  for (const [y, x] of edges.entries()) {
    above += (y - middle) * (x - mean)
    below += (y - middle) ** 2
  }
  const slope = above / below
  return { at: mean - slope * middle, slope }
}

const rowsOf = ({ width, height, values }: RegionValues): readonly Float64Array[] =>
  Array.from({ length: height }, (_, y) => values.subarray(y * width, (y + 1) * width))

/** The edge laid over itself: the mean of what lies in each quarter of a pixel across it. */
const spread = (rows: readonly Float64Array[], { at, slope }: Line): Float64Array | undefined => {
  const across = 1 / Math.hypot(1, slope)
  const width = rows[0]?.length ?? 0
  // As far to each side as every row has it, and no further than noise is worth.
  const middle = at + slope * ((rows.length - 1) / 2)
  const lean = (Math.abs(slope) * rows.length) / 2 + 1
  const side = across * (Math.min(middle, width - middle) - lean)
  const half = TIMES * Math.min(Math.floor(side), MOST_SIDE)
  if (half < TIMES * LEAST_SIDE) return undefined
  const sums = new Float64Array(2 * half)
  const counts = new Float64Array(2 * half)
  for (const [y, row] of rows.entries())
    for (let x = 0; x < row.length; x++) {
      const place = Math.floor((x - at - slope * y) * across * TIMES) + half
      if (place < 0 || place >= sums.length) continue
      sums[place] = (sums[place] ?? 0) + (row[x] ?? 0)
      counts[place] = (counts[place] ?? 0) + 1
    }
  let before = sums[0] ?? 0
  return sums.map((sum, i) => {
    const count = counts[i] ?? 0
    if (count > 0) before = sum / count
    return before
  })
}

/** The size of a line's spectrum at a frequency in cycles a place. */
const spectrumAt = (line: Float64Array, frequency: number): number => {
  let real = 0
  let imaginary = 0
  for (const [i, value] of line.entries()) {
    real += value * Math.cos(2 * Math.PI * frequency * i)
    imaginary -= value * Math.sin(2 * Math.PI * frequency * i)
  }
  return Math.hypot(real, imaginary)
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x))

const STEPS = 100

const responseOf = (spreadEdge: Float64Array) => {
  const count = spreadEdge.length
  const line = new Float64Array(count)
  for (let i = 1; i < count - 1; i++)
    line[i] = ((spreadEdge[i + 1] ?? 0) - (spreadEdge[i - 1] ?? 0)) / 2
  let sum = 0
  let moment = 0
  for (const [i, value] of line.entries()) {
    sum += value
    moment += i * value
  }
  const middle = moment / sum
  const reach = Math.max(middle, count - 1 - middle)
  const windowed = line.map(
    (value, i) => value * (0.54 + 0.46 * Math.cos((Math.PI * (i - middle)) / reach)),
  )
  const whole = spectrumAt(windowed, 0)
  const frequency = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS)
  const mtf = frequency.map((each) => {
    const place = each / TIMES
    // What differences over two places, and means over one, take away.
    return spectrumAt(windowed, place) / whole / (sinc(2 * place) * sinc(place))
  })
  return { frequency, mtf }
}

/** The frequency at which a response first falls to a half, up to 0.5 cycles a pixel. */
const halfOf = (frequency: readonly number[], mtf: readonly number[]): number | undefined => {
  const after = mtf.findIndex((value, i) => value < 0.5 && (frequency[i] ?? 1) <= 0.5)
  const [f0, f1] = [frequency[after - 1], frequency[after]]
  const [m0, m1] = [mtf[after - 1], mtf[after]]
  if (f0 === undefined || f1 === undefined || m0 === undefined || m1 === undefined) return undefined
  return f0 + ((m0 - 0.5) / (m0 - m1)) * (f1 - f0)
}

/**
 * The response of what made a picture, from one straight edge in it that leans a little: the method
 * of ISO 12233:2017, annex D (from memory; checked against edges of known response). Values are
 * linear or near enough: a small step on a signal is.
 */
export const slantedEdge = (region: RegionValues): Result<EdgeResponse> => {
  const across = stepAcross(region)
  const down = stepAcross(turned(region))
  const isHorizontal = Math.abs(down) > Math.abs(across)
  const rows = rowsOf(isHorizontal ? turned(region) : region)
  if (Math.max(Math.abs(across), Math.abs(down)) < LEAST_STEP)
    return fail(
      problem('not-found', 'There is no edge from one level to another; mark one out closely.'),
    )
  if (rows.length < LEAST_ROWS)
    return fail(
      problem(
        'out-of-range',
        `An edge is measured along ${LEAST_ROWS} pixels at least; take more.`,
      ),
    )
  let line = lineThrough(rows.map((row) => edgeOfRow(row, undefined)))
  for (let round = 0; round < 3; round++)
    line = lineThrough(rows.map((row, y) => edgeOfRow(row, line.at + line.slope * y)))
  const angle = (180 / Math.PI) * Math.atan(line.slope)
  if (!(Math.abs(angle) >= LEAST_DEGREES && Math.abs(angle) <= MOST_DEGREES))
    return fail(
      problem(
        'out-of-range',
        `The edge leans by ${Math.abs(angle).toFixed(1)}°; it is measured from ${LEAST_DEGREES} to ${MOST_DEGREES}°, about 5° is best.`,
      ),
    )
  const spreadEdge = spread(rows, line)
  if (!spreadEdge)
    return fail(
      problem('out-of-range', 'The edge is too near the sides of the region; take more around it.'),
    )
  const { frequency, mtf } = responseOf(spreadEdge)
  return ok({ frequency, mtf, half: halfOf(frequency, mtf), angle, isHorizontal })
}

/** The level of the last quarter of the columns less that of the first. */
const stepAcross = ({ width, values }: RegionValues): number => {
  const quarter = Math.max(1, Math.floor(width / 4))
  let before = 0
  let after = 0
  for (const [i, value] of values.entries()) {
    const x = i % width
    if (x < quarter) before += value
    else if (x >= width - quarter) after += value
  }
  return (after - before) / (quarter * (values.length / width))
}
