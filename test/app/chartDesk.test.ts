import { expect, test } from 'vitest'
import { createChartDesk } from '../../src/app/chartDesk.ts'
import type { Workers } from '../../src/app/workers.ts'
import { problem } from '../../src/core/base/problem.ts'
import { MediaError } from '../../src/media/mediaError.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { markOut, setCharting } from '../../src/store/charting.ts'
import { solveHandlers } from '../../src/work/solveHandlers.ts'

const CODING = { matrix: 'bt709', range: 'full' } as const

/** An even picture of 8 bits. */
const EVEN = {
  ...{ width: 40, height: 30, layout: 'rgb', depth: 8 },
  samples: [204, 204, 204].map((code) => new Uint8Array(1200).fill(code)),
} as never

const setUp = (file: File, readStill = async () => ({ planes: EVEN, coding: CODING })) => {
  const store = createAppStore()
  const handlers = solveHandlers(async () => ({}) as never)
  const solve = async (name: keyof typeof handlers, args: never) => {
    if (name === 'chartPicture') return 'data:image/jpeg;base64,'
    return handlers[name](args, {} as never)
  }
  const workers = { solve } as unknown as Workers
  const desk = createChartDesk(store, workers, async () => file, readStill as never)
  return { store, desk, charting: () => store.getState().charting }
}

test('a picture is opened and an even patch measured', async () => {
  const { store, desk, charting } = setUp(new File(['…'], 'gate.tif'))
  await desk.open()
  expect(charting()).toMatchObject({ name: 'gate.tif', picture: { width: 40, height: 30 } })
  await desk.measure()
  expect(charting().measured).toEqual([])
  markOut(store, { x: 0, y: 0, width: 30, height: 30 })
  await desk.measure()
  // Code 204 of 255 is 80 % of 700 mV.
  expect(charting().measured[0]).toMatchObject({ what: 'Green', value: expect.closeTo(560, 9) })
  markOut(store, { x: 20, y: 0, width: 30, height: 30 })
  await desk.measure()
  expect(store.getState().notice?.says).toContain('not on the picture')
})

test('a profile is opened and its streak measured, by the correctors of a machine', async () => {
  const rows = Array.from({ length: 200 }, (_, i) => {
    const at = i / 10
    return `${at},${at < 2 ? 1 : 0.05 * Math.exp(-(at - 1.95) / 3)}`
  })
  const { store, desk, charting } = setUp(new File([`µs,V\n${rows.join('\n')}`], 'line.csv'))
  await desk.open()
  expect(charting()).toMatchObject({ name: 'line.csv', picture: undefined, kind: 'streak' })
  await desk.measure()
  expect(charting().measured[0]?.value).toBeCloseTo(3, 1)
  setCharting(store, { correctors: '1 3' })
  await desk.measure()
  expect(charting().measured.filter(({ what }) => what.includes('corrector'))).toHaveLength(2)
  setCharting(store, { correctors: '1 fast' })
  await desk.measure()
  expect(store.getState().notice?.says).toContain('numbers above 0')
})

test('what cannot be opened is told, and what was open stays', async () => {
  const refuse = async () => {
    throw new MediaError(problem('unknown-format', 'a.mov is not a still.'))
  }
  const { store, desk, charting } = setUp(new File([''], 'a.mov'), refuse as never)
  setCharting(store, { name: 'before.tif' })
  await desk.open()
  expect([charting().name, store.getState().notice?.says]).toEqual([
    'before.tif',
    'a.mov is not a still.',
  ])
})
