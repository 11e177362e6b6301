import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, expect, test } from 'vitest'
import { writeMachineLog } from '../../src/core/formats/readings/machineLogFile.ts'
import { machineLogEntry } from '../support/machineLogOf.ts'
import { reelwright } from './reelwright.ts'

const made: string[] = []
let log = ''
let readings = ''
beforeEach(() => {
  const here = mkdtempSync(join(tmpdir(), 'reelwright-machine-'))
  made.push(here)
  log = join(here, 'machines.log.json')
  readings = join(here, 'today.readings.json')
})
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true })
})

const NAMED = ['--machine', 'Orlop 2', '--gauge', '16mm'] as const
const putReadings = (green: number) =>
  writeFileSync(
    readings,
    JSON.stringify({
      ...{ format: 'reelwright-readings', version: 1 },
      controls: [{ name: 'Red gain', unit: '', low: 0, high: 100 }],
      readings: [{ name: 'Green', unit: 'mV', aim: 665, low: 658, high: 672 }],
      log: [{ settings: [52], values: [green] }],
    }),
  )

test('a first line-up begins a log, and one outside its limits wants a reason', async () => {
  putReadings(640)
  const refused = await reelwright(['machine', log, ...NAMED, '--add', readings])
  expect([refused.status, refused.error]).toEqual([3, expect.stringContaining('limits: Green')])
  expect(existsSync(log)).toBe(false)
  const why = ['--why', 'The tube is at its end.']
  const added = await reelwright(['machine', log, ...NAMED, '--add', readings, ...why])
  expect([added.status, added.out]).toEqual([0, expect.stringContaining('1 line-ups of Orlop 2')])
  expect(JSON.parse(readFileSync(log, 'utf8')).entries[0].reason).toBe('The tube is at its end.')
})

test('drift and the last good set are told', async () => {
  const days = ['2026-10-01', '2026-10-11', '2026-10-21', '2026-10-31', '2026-11-12']
  writeFileSync(log, writeMachineLog(days.map((day, i) => machineLogEntry(day, 50 + 0.4 * i))))
  const { status, out } = await reelwright(['machine', log, ...NAMED])
  expect(status).toBe(0)
  expect(out).toMatch(/Red gain has crept up 3\.\d % in six weeks\./u)
  expect(out).toContain('Last good, 2026-11-12: Red gain 51.6')
})

test.each([
  [['--gauge', '16mm'], 2, '--machine NAME'],
  [['--machine', 'Orlop 2', '--gauge', 'wide'], 2, '--gauge one of'],
  [['--machine', 'Orlop 9', '--gauge', '16mm'], 3, 'it knows: Orlop 2'],
])('%j is refused', async (args, status, says) => {
  writeFileSync(log, writeMachineLog([machineLogEntry('2026-10-01', 50)]))
  const refused = await reelwright(['machine', log, ...args])
  expect([refused.status, refused.error]).toEqual([status, expect.stringContaining(says)])
})
