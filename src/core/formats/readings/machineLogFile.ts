import * as v from 'valibot'
import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { type MachineLog, MOST_ENTRIES } from '../../lineup/machineLog.ts'
import type { Gauge } from '../../time/footage.ts'
import { GAUGE_WORDS } from '../../time/gaugeWords.ts'
import { problemOfIssue } from '../job/issueWords.ts'
import { finite, moment, text } from '../job/schemaParts.ts'

const LARGEST_TEXT = 64 * 2 ** 20
const MOST_VALUES = 256

const name = v.pipe(text(100), v.minLength(1))
const unit = text(20)

const entrySchema = v.strictObject({
  machine: name,
  gauge: v.picklist(Object.keys(GAUGE_WORDS) as [Gauge, ...Gauge[]]),
  at: moment,
  controls: v.pipe(
    v.array(v.strictObject({ name, unit, value: finite })),
    v.maxLength(MOST_VALUES),
  ),
  readings: v.pipe(
    v.array(v.strictObject({ name, unit, aim: finite, low: finite, high: finite, value: finite })),
    v.maxLength(MOST_VALUES),
  ),
  reason: text(4000),
})

const logSchema = v.strictObject({
  format: v.literal('reelwright-machine-log'),
  version: v.literal(1),
  entries: v.pipe(v.array(entrySchema), v.maxLength(MOST_ENTRIES)),
})

/** Line-ups of machines as a file (docs/readings.md), a line each. */
export const writeMachineLog = (log: MachineLog): string =>
  `{ "format": "reelwright-machine-log", "version": 1, "entries": [\n${log
    .map((entry) => JSON.stringify(entry))
    .join(',\n')}\n] }\n`

/** A file of line-ups of machines → a log, by time. Refused whole with all that is wrong with it. */
export const readMachineLog = (json: string): Result<MachineLog> => {
  if (json.length > LARGEST_TEXT)
    return fail(problem('too-large', 'A log of more than 64 MB is not read; give fewer entries.'))
  let parsed: unknown
  try {
    parsed = JSON.parse(json.replace(/^\ufeff/u, ''))
  } catch {
    return fail(problem('malformed', 'This is no machine log: it does not read as JSON.'))
  }
  const file = v.safeParse(logSchema, parsed)
  if (file.success) return ok(file.output.entries.toSorted((a, b) => (a.at < b.at ? -1 : 1)))
  const [first, ...rest] = file.issues
  return fail(problemOfIssue(first), ...rest.map((issue) => problemOfIssue(issue)))
}
