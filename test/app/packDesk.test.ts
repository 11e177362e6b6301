import { expect, test } from 'vitest'
import { createPackDesk } from '../../src/app/packDesk.ts'
import type { Workers } from '../../src/app/workers.ts'
import { problem } from '../../src/core/base/problem.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob } from '../../src/store/document.ts'
import { jobOf } from '../../src/store/queries.ts'
import type { ReviewRequest } from '../../src/work/review/reviewPictures.ts'
import { CallError } from '../../src/work/rpc.ts'
import { cueId, sampleJob } from '../support/sampleJob.ts'
import { DOT } from '../support/sampleReport.ts'

const SHAPE = { cues: [1, 2, 3, 4].map(cueId), clipSeconds: 0, hasStills: false }
const OPTIONS = { ...SHAPE, madeFor: 'Ines' }

type Asked = { readonly request: ReviewRequest; readonly signal: AbortSignal | undefined }

/** A desk over a worker that answers at once, unless `onPictures` does something about it. */
const setUp = (onPictures: (asked: Asked) => void | Promise<void> = () => {}) => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  store.setState({ media: 'ready' })
  const stills = async (_: string, request: ReviewRequest, { signal }: Partial<Asked> = {}) => {
    await onPictures({ request, signal })
    signal?.throwIfAborted()
    return { before: DOT, after: DOT, alternates: request.alternates.map(() => DOT) }
  }
  const saved = new Map<string, Blob>()
  const desk = createPackDesk(store, { stills } as unknown as Workers, async (name, make) => {
    saved.set(name, await make())
    return true
  })
  const packs = () => Object.values(jobOf(store.getState())?.packs ?? {})
  return { store, saved, desk, packs }
}

test('a pack is saved, and the job knows it', async () => {
  const { store, saved, desk, packs } = setUp()
  await desk.make(OPTIONS)
  expect([...saved.keys()]).toEqual(['Orlop-reel-1-review.html'])
  expect(packs()).toMatchObject([{ cues: 4, madeFor: 'Ines' }])
  expect(store.getState().agreeing.making).toBeUndefined()
})

test('it is given up, and that is told, where another scan is opened meanwhile', async () => {
  const { store, saved, desk, packs } = setUp(({ request }) => {
    if (request.frame > 200) store.setState({ media: 'opening' })
  })
  await desk.make(OPTIONS)
  expect([saved.size, packs()]).toEqual([0, []])
  expect(store.getState().notice?.says).toContain('another scan was opened')
})

test('also where the worker only says that it cannot read any more', async () => {
  const gone = problem('cannot-decode', 'No scan is open.')
  const { store, saved, desk } = setUp(() => {
    store.setState({ media: 'opening' })
    throw new CallError(gone.says, gone)
  })
  await desk.make(OPTIONS)
  expect(saved.size).toBe(0)
  expect(store.getState().notice?.says).toContain('another scan was opened')
})

test('reckoning a size meanwhile does not end it, and a second one is not begun', async () => {
  const going: (() => void)[] = []
  const { desk, packs, saved } = setUp(() => new Promise((resolve) => going.push(resolve)))
  const first = desk.make(OPTIONS)
  await expect.poll(() => going.length).toBe(1)
  const size = desk.estimate({ ...SHAPE, cues: [cueId(1)] })
  await desk.make({ ...OPTIONS, madeFor: 'Joren' })
  const timer = setInterval(() => {
    for (const go of going.splice(0)) go()
  })
  await Promise.all([first, size])
  clearInterval(timer)
  expect(saved.size).toBe(1)
  expect(packs()).toMatchObject([{ madeFor: 'Ines' }])
})

test('stopping reaches the worker, and nothing is kept or said', async () => {
  const signals: (AbortSignal | undefined)[] = []
  const { store, saved, desk, packs } = setUp(({ signal }) => {
    signals.push(signal)
    desk.stop()
  })
  await desk.make(OPTIONS)
  expect(signals.map((signal) => signal?.aborted)).toEqual([true])
  expect([saved.size, packs()]).toEqual([0, []])
  expect(store.getState().notice).toBeUndefined()
})

test('cues without pictures are left out and told; a pack without any is not made', async () => {
  const damaged = problem('cannot-decode', 'Damaged.')
  let from = 200
  const { store, saved, desk, packs } = setUp(({ request }) => {
    if (request.frame > from) throw new CallError(damaged.says, damaged)
  })
  await desk.make(OPTIONS)
  expect(packs()[0]?.cues).toBeLessThan(4)
  expect(store.getState().notice?.says).toContain('is left out')
  saved.clear()
  from = -1
  await desk.make(OPTIONS)
  expect([saved.size, packs().length]).toEqual([0, 1])
})

test('a size is reckoned for just that shape, larger with stills', async () => {
  const { store, desk } = setUp()
  await desk.estimate(SHAPE)
  const plain = store.getState().agreeing.estimate
  expect(plain?.of).toBe(SHAPE)
  await desk.estimate({ ...SHAPE, hasStills: true })
  expect(store.getState().agreeing.estimate?.bytes).toBeGreaterThan(plain?.bytes ?? 0)
})
