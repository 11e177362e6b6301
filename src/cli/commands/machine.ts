import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { readMachineLog, writeMachineLog } from '../../core/formats/readings/machineLogFile.ts'
import { readReadings } from '../../core/formats/readings/readReadings.ts'
import { readingsOutside } from '../../core/lineup/adjustment.ts'
import { driftOf } from '../../core/lineup/drift.ts'
import { driftWords } from '../../core/lineup/driftWords.ts'
import {
  entriesOf,
  lastGood,
  type MachineEntry,
  type MachineLog,
  machineEntry,
  machinesOf,
  seriesOf,
  withEntry,
} from '../../core/lineup/machineLog.ts'
import { withUnit } from '../../core/lineup/withUnit.ts'
import type { Gauge } from '../../core/time/footage.ts'
import { GAUGE_WORDS } from '../../core/time/gaugeWords.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { ofFile, readText } from '../readBytes.ts'
import type { Terminal } from '../terminal.ts'
import { notOver, writeWhole } from '../writeFiles.ts'

export const MACHINE_USAGE =
  'reelwright machine LOG.json --machine NAME --gauge G [--add READINGS.json [--why REASON]] [--json]'

const GAUGES = Object.keys(GAUGE_WORDS) as Gauge[]

/** A log from its file; none yet where a first line-up is to be added. */
const readLog = async (path: string, mayBeginIt: boolean): Promise<Result<MachineLog>> => {
  const text = await readText(path)
  if (!text.ok) return mayBeginIt && text.problems[0].code === 'cannot-read' ? ok([]) : text
  return ofFile(readMachineLog(text.value), path)
}

/** How a line-up ended, from its readings; refused with a reading outside and no reason why. */
const entryOf = async (
  path: string,
  particulars: Pick<MachineEntry, 'machine' | 'gauge' | 'reason'>,
): Promise<Result<MachineEntry>> => {
  const text = await readText(path)
  if (!text.ok) return text
  const readings = ofFile(readReadings(text.value), path)
  if (!readings.ok) return readings
  const adjustment = readings.value
  const outside = readingsOutside(adjustment.readings, adjustment.log.at(-1)?.values ?? [])
  const names = outside.map((i) => adjustment.readings[i]?.name).join(', ')
  if (outside.length > 0 && particulars.reason === '')
    return fail(
      problem('conflict', `Outside its limits: ${names}. Give --why it is left so.`, {
        file: path,
      }),
    )
  const reason = outside.length > 0 ? particulars.reason : ''
  const made = machineEntry(adjustment, { ...particulars, reason, at: new Date().toISOString() })
  return made ? ok(made) : fail(problem('missing', 'Nothing is written down in the readings.'))
}

/** Tells how a machine has changed over its line-ups, and adds one to its log. */
export const machineCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const options = {
    ...{ machine: text, gauge: text, add: text, why: text },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, MACHINE_USAGE)
  if (!args.ok) return args
  const [path, another] = args.value.positionals
  const machine = textOption(args.value, 'machine')?.trim() ?? ''
  const gauge = GAUGES.find((each) => each === textOption(args.value, 'gauge'))
  const add = textOption(args.value, 'add')
  if (path === undefined || another !== undefined)
    return wrongUse('Give one log of machines.', MACHINE_USAGE)
  if (machine === '' || machine.length > 100)
    return wrongUse('Say which machine with --machine NAME.', MACHINE_USAGE)
  if (!gauge) return wrongUse(`Give --gauge one of ${GAUGES.join(', ')}.`, MACHINE_USAGE)
  const before = await readLog(path, add !== undefined)
  if (!before.ok) return before
  let log = before.value
  if (add !== undefined) {
    const reason = textOption(args.value, 'why')?.trim() ?? ''
    const entry = await entryOf(add, { machine, gauge, reason })
    if (!entry.ok) return entry
    log = withEntry(log, entry.value)
    const free = await notOver([path], [add])
    if (!free.ok) return free
    const written = await writeWhole(path, writeMachineLog(log))
    if (!written.ok) return written
  }
  const entries = entriesOf(log, machine, gauge)
  if (entries.length === 0)
    return fail(
      problem(
        'not-found',
        `The log has no line-up of “${machine}” with ${GAUGE_WORDS[gauge]}; it knows: ${machinesOf(log).join(', ') || 'none'}.`,
      ),
    )
  const series = seriesOf(entries).map((each) => ({ ...each, drift: driftOf(each) }))
  const good = lastGood(entries)
  if (args.value.values.json)
    terminal.json({ machine, gauge, entries: entries.length, series, lastGood: good ?? null })
  else {
    terminal.print(`${entries.length} line-ups of ${machine} with ${GAUGE_WORDS[gauge]}.`)
    for (const { drift, ...each } of series) if (drift) terminal.print(driftWords(each, drift))
    if (good)
      terminal.print(
        `Last good, ${good.at.slice(0, 10)}: ${good.controls.map(({ name, unit, value }) => `${name} ${withUnit(value, unit)}`).join(', ')}.`,
      )
    if (add !== undefined) terminal.print(`Wrote ${path}`)
  }
  return ok(EXIT.fine)
}
