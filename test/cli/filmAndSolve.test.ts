import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { reelwright } from './reelwright.ts'

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-solve-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const film = (...args: readonly string[]) => reelwright(['film', ...args])

test.each([
  [['length', '400 ft', '--gauge', '16mm'], '16000 frames, 400 ft 00 fr, 121.92 m'],
  [['length', '11:07', '--gauge', '35mm-4perf', '--speed', '24'], '16008 frames, 1000 ft 08 fr'],
  [['speed', '24', '25'], 'pitch +70.672 cents'],
  [
    ['sound', '--gauge', '16mm', '--track', 'optical', '--speed', '25'],
    '26 frames ahead of its picture, 1.0400 s',
  ],
  [
    ['shrinkage', '--gauge', '16mm', '--pitches', '100', '--measured', '754.38'],
    '−1.000 % in length',
  ],
  [['pulldown', '7'], 'film frame 5 (B) in its first field, 6 (C) in its second; mixed of two'],
])('film %j', async (args, says) => {
  const { status, out } = await film(...args)
  expect([status, out]).toEqual([0, expect.stringContaining(says)])
})

test.each([
  [['length', '400 ft', '--gauge', '17mm'], 2, 'Give --gauge one of'],
  [['length', 'long', '--gauge', '16mm'], 3, 'is no length of film'],
  [['sound', '--gauge', '9.5mm', '--track', 'optical'], 3, 'measure it on the film'],
  [['speed', '24'], 2, 'Give two speeds'],
  [['shrinkage', '--gauge', '16mm', '--pitches', '0', '--measured', '1'], 3, 'both above 0'],
  [['weight'], 2, 'Say what'],
])('film %j is refused', async (args, status, says) => {
  const refused = await film(...args)
  expect([refused.status, refused.error]).toEqual([status, expect.stringContaining(says)])
})

/** Beam current and a gain, which act on the levels of two channels. */
const sheet = (log: readonly (readonly [readonly number[], readonly number[]])[]) => ({
  format: 'reelwright-readings',
  version: 1,
  controls: [
    { name: 'Beam current', unit: 'µA', low: 0, high: 250 },
    { name: 'Blue gain', unit: '%', low: 0, high: 200 },
  ],
  readings: [
    { name: 'Green, open gate', unit: 'mV', aim: 665, low: 658, high: 672 },
    { name: 'Blue, open gate', unit: 'mV', aim: 665, low: 658, high: 672 },
  ],
  log: log.map(([settings, values]) => ({ settings, values })),
})

const solve = async (name: string, content: unknown, ...more: readonly string[]) => {
  const path = join(folder, `${name}.json`)
  writeFileSync(path, JSON.stringify(content))
  return reelwright(['solve', path, ...more])
}

test('solve leads from a first reading to all controls at once', async () => {
  const first = await solve(
    'first',
    sheet([
      [
        [120, 100],
        [520, 480],
      ],
    ]),
  )
  expect([first.status, first.out]).toEqual([
    0,
    expect.stringContaining('Move Beam current alone, to 145 µA'),
  ])
  const log = [
    [
      [120, 100],
      [520, 480],
    ],
    [
      [145, 100],
      [628.3, 580],
    ],
    [
      [145, 120],
      [628.3, 696],
    ],
  ] as const
  const set = await solve('set', sheet(log))
  expect(set.status).toBe(0)
  expect(set.out).toContain('Set all of these')
  const told = JSON.parse((await solve('set', sheet(log), '--json')).out)
  const [beam = 0, gain = 0] = told.plan.settings
  expect((520 / 120) * beam).toBeCloseTo(665, 0)
  expect(beam).toBeLessThanOrEqual(250)
  expect(gain).toBeGreaterThan(90)
  const done = await solve(
    'done',
    sheet([
      ...log,
      [
        [153.46, 108],
        [665, 665],
      ],
    ]),
  )
  expect(done.out).toContain('All readings are inside')
})

test('solve never asks past a hard limit, and says what cannot be reached and why', async () => {
  const weak = [
    [
      [150, 100],
      [300, 290],
    ],
    [
      [175, 100],
      [350, 338],
    ],
    [
      [175, 120],
      [350, 406],
    ],
  ] as const
  const { status, out } = await solve('weak', sheet(weak))
  expect(status).toBe(1)
  expect(out).toContain('It cannot be done')
  expect(out).toContain('Green, open gate: the controls that move it end at their hard limits.')
  expect(out).toContain('Beam current: 250 µA (now 175 µA), its upper hard limit')
})

test.each([
  ['no JSON', '{', 'do not read as JSON'],
  ['another format', { format: 'x' }, 'In the readings, “format” must be'],
  [
    'a control past its limit',
    sheet([
      [
        [300, 100],
        [1, 1],
      ],
    ]),
    'stands past its hard limit',
  ],
  ['a value missing', sheet([[[1, 1], [1]]]), 'has not one number for every control and reading'],
])('solve refuses %s', async (_, content, says) => {
  const path = join(folder, 'refused.json')
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content))
  const refused = await reelwright(['solve', path])
  expect([refused.status, refused.error]).toEqual([3, expect.stringContaining(says)])
})
