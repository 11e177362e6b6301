import * as v from 'valibot'
import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { Adjustment } from '../../lineup/adjustment.ts'
import { problemOfIssue } from '../job/issueWords.ts'
import { finite, text } from '../job/schemaParts.ts'

/** More than any machine has, and few enough to be solved at once. */
const MOST_CONTROLS = 64
const MOST_READINGS = 256
const MOST_OBSERVATIONS = 10_000

/** What such numbers come to, with room to spare. */
const LARGEST_TEXT = 32 * 2 ** 20

const name = v.pipe(text(100), v.minLength(1))
const numbers = (most: number) => v.pipe(v.array(finite), v.maxLength(most))

const readingsSchema = v.strictObject({
  format: v.literal('reelwright-readings'),
  version: v.literal(1),
  controls: v.pipe(
    v.array(v.strictObject({ name, unit: v.optional(text(20), ''), low: finite, high: finite })),
    v.minLength(1),
    v.maxLength(MOST_CONTROLS),
  ),
  readings: v.pipe(
    v.array(
      v.strictObject({
        name,
        unit: v.optional(text(20), ''),
        aim: finite,
        low: finite,
        high: finite,
      }),
    ),
    v.minLength(1),
    v.maxLength(MOST_READINGS),
  ),
  log: v.pipe(
    v.array(v.strictObject({ settings: numbers(MOST_CONTROLS), values: numbers(MOST_READINGS) })),
    v.minLength(1),
    v.maxLength(MOST_OBSERVATIONS),
  ),
})

/**
 * A file of controls, readings and what was tried (docs/readings.md) → an adjustment. Refused whole
 * with all that is wrong with it; whether its parts fit together `solveAdjustment` says.
 */
export const readReadings = (json: string): Result<Adjustment> => {
  if (json.length > LARGEST_TEXT)
    return fail(problem('too-large', 'Readings of more than 32 MB are not read; give fewer.'))
  let parsed: unknown
  try {
    parsed = JSON.parse(json.replace(/^\ufeff/u, ''))
  } catch {
    return fail(problem('malformed', 'These are no readings: they do not read as JSON.'))
  }
  const file = v.safeParse(readingsSchema, parsed)
  if (!file.success) {
    const [first, ...rest] = file.issues.map((issue) => problemOfIssue(issue, 'the readings'))
    return first ? fail(first, ...rest) : fail(problem('malformed', 'The readings cannot be read.'))
  }
  const { controls, readings, log } = file.output
  return ok({
    controls: controls.map((each) => ({ id: each.name, ...each })),
    readings: readings.map((each) => ({ id: each.name, ...each })),
    log,
  })
}
