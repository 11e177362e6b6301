import * as v from 'valibot'
import {
  LARGEST_NUMBER,
  MOST_CUBE_POINTS,
  MOST_CURVE_POINTS,
  MOST_STEPS,
  NAME_LIMIT,
  SMALLEST_GAMMA,
} from '../../job/limits.ts'

/** What JSON reads as infinite is past the largest number too. */
export const finite = v.pipe(v.number(), v.minValue(-LARGEST_NUMBER), v.maxValue(LARGEST_NUMBER))

export const wholeFrom = (low: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(low), v.maxValue(Number.MAX_SAFE_INTEGER))

export const text = (limit: number) => v.pipe(v.string(), v.maxLength(limit))

export const triple = v.strictTuple([finite, finite, finite])

export const identifier = v.pipe(v.string(), v.regex(/^[A-Za-z][A-Za-z0-9_-]{0,63}$/))
const gamma = v.pipe(finite, v.minValue(SMALLEST_GAMMA))
export const gammaTriple = v.strictTuple([gamma, gamma, gamma])

export const sha256 = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))

/** A moment in UTC, ISO 8601. */
export const moment = v.pipe(v.string(), v.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,3})?Z$/))

const above0 = v.pipe(finite, v.gtValue(0))
const from0 = v.pipe(finite, v.minValue(0))
const end = v.nullable(v.strictTuple([finite, finite]))
const points = (most: number) => v.pipe(wholeFrom(2), v.maxValue(most))

/** The Common LUT Format's operators that a base can hold, on signal (core/process/processList.ts). */
const stepSchema = v.variant('kind', [
  v.strictObject({
    kind: v.literal('cdl'),
    style: v.picklist(['forward', 'reverse', 'forward-no-clamp', 'reverse-no-clamp']),
    cdl: v.strictObject({
      slope: v.strictTuple([from0, from0, from0]),
      offset: triple,
      power: v.strictTuple([above0, above0, above0]),
      saturation: from0,
    }),
  }),
  v.strictObject({
    kind: v.literal('matrix'),
    rows: v.strictTuple([triple, triple, triple]),
    offset: triple,
  }),
  v.strictObject({ kind: v.literal('range'), low: end, high: end, clamps: v.boolean() }),
  v.strictObject({
    kind: v.literal('curve'),
    channels: v.picklist([1, 3]),
    points: points(MOST_CURVE_POINTS),
    values: v.pipe(v.array(finite), v.maxLength(3 * MOST_CURVE_POINTS)),
  }),
  v.strictObject({
    kind: v.literal('cube'),
    interpolation: v.picklist(['trilinear', 'tetrahedral']),
    points: points(MOST_CUBE_POINTS),
    values: v.pipe(v.array(finite), v.maxLength(3 * MOST_CUBE_POINTS ** 3)),
  }),
])

export const processListSchema = v.strictObject({
  name: text(NAME_LIMIT),
  steps: v.pipe(v.array(stepSchema), v.minLength(1), v.maxLength(MOST_STEPS)),
})
