import { describe, expect, it } from 'vitest'
import {
  readMachineLog,
  writeMachineLog,
} from '../../../src/core/formats/readings/machineLogFile.ts'
import { driftOf } from '../../../src/core/lineup/drift.ts'
import { driftWords, spanWords } from '../../../src/core/lineup/driftWords.ts'
import {
  entriesOf,
  lastGood,
  MOST_ENTRIES,
  machinesOf,
  seriesOf,
  withEntry,
} from '../../../src/core/lineup/machineLog.ts'
import { machineLogEntry } from '../../support/machineLogOf.ts'

const DAYS = ['2026-10-01', '2026-10-08', '2026-10-15', '2026-10-22', '2026-10-29', '2026-11-12']

/** A week apart, gain and level as given by the number of weeks. */
const weekly = (gain: (week: number) => number, green: (week: number) => number = () => 665) =>
  DAYS.map((day, i) => {
    const week = i === 5 ? 6 : i
    return machineLogEntry(day, gain(week), green(week))
  })

const told = (log: ReturnType<typeof weekly>): readonly string[] =>
  seriesOf(log).flatMap((each) => {
    const drift = driftOf(each)
    return drift ? [driftWords(each, drift)] : []
  })

describe('drift', () => {
  it('is told as a person says it', () => {
    const log = weekly((week) => 50 * (1 + (0.03 * week) / 6) + (week % 2 ? 0.02 : -0.02))
    expect(told(log)).toEqual(['Red gain has crept up 3 % in six weeks.'])
  })

  it('tells when a reading passes its limit at this rate, or that it has', () => {
    const log = weekly(
      () => 50,
      (week) => 665 + week + (week % 2 ? 0.1 : -0.1),
    )
    expect(told(log)[0]).toMatch(
      /^Green has crept up 0\.\d\d % in six weeks; at this rate it passes its limit in eight days\.$/u,
    )
    const past = weekly(
      () => 50,
      (week) => 665 + 2 * week,
    )
    expect(told(past)[0]).toContain('and is past its limit.')
  })

  it('is not told of noise, of a few line-ups, or of a little', () => {
    expect(told(weekly((week) => 50 + ([0.4, -0.5, 0.1, 0.6, -0.6, 0, 0.2][week] ?? 0)))).toEqual(
      [],
    )
    expect(told(weekly((week) => 50 + week).slice(0, 3))).toEqual([])
    expect(told(weekly((week) => 50 + 0.01 * week))).toEqual([])
  })

  it('looks back three months and no further', () => {
    const old = machineLogEntry('2025-01-01', 900)
    expect(told([old, ...weekly((week) => 50 + 0.25 * week)])[0]).toContain('in six weeks')
  })

  it.each([
    [1, 'one day'],
    [10, 'ten days'],
    [13, '13 days'],
    [42, 'six weeks'],
    [92, 'three months'],
  ])('%i days are %s', (days, words) => expect(spanWords(days)).toBe(words))
})

it('keeps line-ups by time, of each machine and gauge apart, and no more than it may', () => {
  const other = machineLogEntry('2026-10-02', 1, 665, { machine: 'Orlop 1' })
  const wide = machineLogEntry('2026-10-03', 1, 665, { gauge: '35mm-4perf' })
  const log = [...weekly(() => 50), wide, other].reduce(withEntry, [])
  expect(log.map(({ at }) => at)).toEqual(log.map(({ at }) => at).toSorted())
  expect(entriesOf(log, 'Orlop 2', '16mm')).toHaveLength(6)
  expect(machinesOf(log)).toEqual(['Orlop 1', 'Orlop 2'])
  const full = Array.from({ length: MOST_ENTRIES }, () => machineLogEntry('2026-01-01', 1))
  expect(withEntry(full, other)).toHaveLength(MOST_ENTRIES)
})

it('finds the last line-up with every reading inside', () => {
  const bad = machineLogEntry('2026-11-20', 60, 680)
  expect(lastGood([...weekly((week) => 50 + week), bad])?.controls[0]?.value).toBe(56)
  expect(lastGood([bad])).toBeUndefined()
})

it('comes back from its file as it was, and refuses what is none', () => {
  const log = weekly((week) => 50 + week)
  const read = readMachineLog(writeMachineLog(log))
  expect(read.ok && read.value).toEqual(log)
  expect(readMachineLog('{').ok).toBe(false)
  const wrong = writeMachineLog(log).replace('"16mm"', '"17mm"')
  const refused = readMachineLog(wrong)
  expect(!refused.ok && refused.problems[0].says).toContain('17mm')
})
