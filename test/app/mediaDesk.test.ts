import { expect, it, vi } from 'vitest'
import { createMediaDesk } from '../../src/app/mediaDesk.ts'
import type { Questions } from '../../src/app/questions.ts'
import type { Shelf } from '../../src/app/shelf.ts'
import type { Workers } from '../../src/app/workers.ts'
import { ok } from '../../src/core/base/result.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import type { MediaFacts } from '../../src/media/mediaFacts.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { jobOf } from '../../src/store/queries.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'

const JOB_TEXT = writeJob(sampleJob())

const SCAN = new File(['scan'], 'orlop-1.mov')
const OTHER = new File(['other'], 'other.mov')

const factsOf = (file: File): MediaFacts => {
  const { media, frames, rate } = sampleReel()
  const { name, bytes } = file === SCAN ? media : { name: file.name, bytes: 5 }
  return { ...media, frames, rate, name, bytes } as unknown as MediaFacts
}

/** A desk over workers that open anything, and what was asked of the person and of the workers. */
const desk = (answers: { readonly isWanted?: boolean; readonly isAnswered?: boolean } = {}) => {
  const store = createAppStore()
  const opened: File[] = []
  const open = async (_: 'open', { files }: { files: readonly File[] }) => {
    const file = files[0]
    if (!file) throw new Error('no file')
    opened.push(file)
    return ok(factsOf(file))
  }
  const workers = { screen: open, passes: async () => ok(0), stills: async () => ok(0) }
  const confirm = vi.fn(async () => answers.isWanted ?? false)
  const coding = vi.fn(async (facts: MediaFacts) =>
    answers.isAnswered === false
      ? undefined
      : { matrix: 'bt709' as const, range: 'narrow' as const, rate: facts.rate },
  )
  const putScan = vi.fn(async () => undefined)
  const onReady = vi.fn()
  const media = createMediaDesk(
    store,
    workers as unknown as Workers,
    { putScan } as unknown as Shelf,
    { confirm, coding } as unknown as Questions,
    { reel: '', reelName: '', job: '' },
    onReady,
  )
  return { store, media, opened, confirm, coding, putScan, onReady }
}

it('a job whose scan is open already does not ask for it again', async () => {
  const { store, media, opened, confirm, putScan, onReady } = desk()
  await media.openJobText(JOB_TEXT, 'orlop.json')
  expect(store.getState().media).toBe('missing')
  await media.openReel([SCAN])
  expect(store.getState().media).toBe('ready')
  await media.openJobText(JOB_TEXT, 'orlop.json')
  expect(store.getState().media).toBe('ready')
  expect(opened).toEqual([SCAN])
  expect(confirm).not.toHaveBeenCalled()
  expect(putScan).toHaveBeenLastCalledWith(store.getState().shelfKey, [SCAN])
  expect(onReady).toHaveBeenCalledTimes(2)
})

it('a job of another scan than the open one says that its scan is missing', async () => {
  const { store, media } = desk({ isWanted: true })
  await media.openJobText(JOB_TEXT, 'orlop.json')
  await media.openReel([OTHER])
  expect(store.getState().media).toBe('ready')
  await media.openJobText(JOB_TEXT, 'orlop.json')
  expect(store.getState().media).toBe('missing')
})

it('a job and its scan dropped together are brought together', async () => {
  const { store, media, coding } = desk()
  await media.openReel([OTHER])
  expect(coding).toHaveBeenCalledOnce()
  const jobFile = new File([JOB_TEXT], 'orlop.reelwright.json')
  await media.openAny([SCAN, jobFile])
  expect(store.getState().media).toBe('ready')
  expect(jobOf(store.getState())).toEqual(sampleJob())
  expect(coding).toHaveBeenCalledOnce()
})

it('a job that cannot be read leaves what is on screen as it was', async () => {
  const { store, media } = desk()
  await media.openJobText(JOB_TEXT, 'orlop.json')
  await media.openAny([new File(['{}'], 'broken.json'), OTHER])
  expect(jobOf(store.getState())).toEqual(sampleJob())
  expect(store.getState().notice?.says).toMatch(/^broken\.json: /u)
})

it('a reel that is not wanted after all leaves the open one on screen', async () => {
  const { store, media, opened } = desk({ isAnswered: false })
  await media.openJobText(JOB_TEXT, 'orlop.json')
  await media.openReel([SCAN])
  await media.openReel([OTHER])
  expect(store.getState().media).toBe('ready')
  expect(jobOf(store.getState())).toEqual(sampleJob())
  expect(opened).toEqual([SCAN, OTHER, SCAN])
})
