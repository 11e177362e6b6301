import { expect, test } from 'vitest'
import { createReportSaving } from '../../src/app/report.ts'
import type { Workers } from '../../src/app/workers.ts'
import { problem } from '../../src/core/base/problem.ts'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { checkKeyAt } from '../../src/store/checkKey.ts'
import { showJob } from '../../src/store/document.ts'
import { cuesOf, profileHere, reelOf } from '../../src/store/queries.ts'
import { withVerdict } from '../../src/store/verdictBook.ts'
import type { PicturesRequest } from '../../src/work/framePictures.ts'
import { handOverHandlers } from '../../src/work/handOverHandlers.ts'
import { CallError } from '../../src/work/rpc.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'
import { DOT, verdict } from '../support/sampleReport.ts'

type Ask = (name: string, args: unknown) => Promise<unknown>

/** A desk over workers that answer at once, and what it saved. */
const setUp = (onPictures: (request: PicturesRequest) => void = () => {}) => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  store.setState({ media: 'ready' })
  const calls: string[] = []
  const handlers = handOverHandlers(() => new Uint8Array())
  const stills: Ask = async (name, args) => {
    calls.push(name)
    if (name === 'checksum') return { sha256: '12'.repeat(32), files: 1 }
    onPictures(args as PicturesRequest)
    return { frame: (args as PicturesRequest).frame, scanned: DOT, graded: DOT }
  }
  const handOver: Ask = async (_, args) => handlers.report(args as never, {} as never)
  const saved = new Map<string, Blob>()
  const save = createReportSaving(
    store,
    { stills, handOver } as unknown as Workers,
    async (name, make) => {
      saved.set(name, await make())
      return true
    },
    () => '27 November 2026',
  )
  const told: string[] = []
  const stop = new AbortController()
  const report = async (wantsChecksum = false): Promise<string> => {
    await save({ wantsChecksum, onProgress: (words) => told.push(words), signal: stop.signal })
    return (await saved.get('Orlop-reel-1-report.html')?.text()) ?? ''
  }
  return { store, calls, saved, told, stop, report }
}

test('a report has pictures, the verdicts that are known, and the lists', async () => {
  const { store, calls, told, report } = setUp()
  const state = store.getState()
  const [reel, profile] = [reelOf(state), profileHere(state)]
  if (!reel || !profile) throw new Error('no reel')
  const key = checkKeyAt(cuesOf(state), 1, reel, profile)
  store.setState(({ verdicts }) => ({
    verdicts: withVerdict(
      verdicts,
      key,
      verdict(),
      cuesOfReel(sampleJob(), REEL_ID)[1]?.first as never,
    ),
  }))
  const page = await report()
  expect(page.match(/<img /gu)).toHaveLength(8)
  expect(page.match(/<dd>● inside/gu)).toHaveLength(1)
  expect(page.match(/<dd>◌ not measured<\/dd>/gu)).toHaveLength(3)
  expect(page).toContain('27 November 2026')
  expect(page).toContain('Orlop-reel-1.csv')
  expect(page).toContain('not worked out for this report')
  expect(calls).not.toContain('checksum')
  expect(told).toEqual([
    ...[1, 2, 3, 4].map((number) => `Pictures of cue ${number} of 4`),
    'Writing the report',
  ])
  expect(store.getState().notice?.says).toBe('Saved Orlop-reel-1-report.html.')
})

test('the scan is read for its checksum only where that is asked for', async () => {
  const { told, report } = setUp()
  expect(await report(true)).toContain('12'.repeat(32))
  expect(told[0]).toBe('Reading the scan for its checksum: 0 %')
})

test('without its scan a report is made without pictures and checksum', async () => {
  const { store, calls, report } = setUp()
  store.setState({ media: 'missing' })
  const page = await report(true)
  expect(page).toContain('There are no pictures')
  expect(calls).toEqual([])
})

test('a frame that cannot be read has no picture, and the report is made all the same', async () => {
  const damaged = problem('cannot-decode', 'Frame 174 is damaged.')
  const { report } = setUp(({ frame }) => {
    if (frame === 174) throw new CallError(damaged.says, damaged)
  })
  const page = await report()
  expect(page.match(/<img /gu)).toHaveLength(6)
  expect(page).toContain('3 of 4 cues have pictures')
})

test('nothing is saved once it is stopped, and nothing is said', async () => {
  const { store, saved, stop, report } = setUp(() => stop.abort())
  await report()
  expect(saved.size).toBe(0)
  expect(store.getState().notice).toBeUndefined()
})

test('a report is given up, and that is told, where another scan is opened meanwhile', async () => {
  const { store, saved, report } = setUp(() => store.setState({ media: 'opening' }))
  await report()
  expect(saved.size).toBe(0)
  expect(store.getState().notice).toMatchObject({ isProblem: true })
  expect(store.getState().notice?.says).toContain('another scan was opened')
})
