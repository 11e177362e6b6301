import { expect, it, vi } from 'vitest'
import { createMediaDesk } from '../../src/app/mediaDesk.ts'
import type { Questions } from '../../src/app/questions.ts'
import type { RescanDesk } from '../../src/app/rescanDesk.ts'
import type { Shelf } from '../../src/app/shelf.ts'
import type { Workers } from '../../src/app/workers.ts'
import { ok } from '../../src/core/base/result.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import type { MediaFacts } from '../../src/media/mediaFacts.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { redo, undo } from '../../src/store/document.ts'
import { jobOf, reelOf } from '../../src/store/queries.ts'
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
  const coding = vi.fn(async (facts: MediaFacts) =>
    answers.isAnswered === false
      ? undefined
      : { matrix: 'bt709' as const, range: 'narrow' as const, rate: facts.rate },
  )
  const putScan = vi.fn(async () => undefined)
  const onReady = vi.fn()
  const openLists = vi.fn(async () => undefined)
  const askRescan = vi.fn<RescanDesk['ask']>(async () => (answers.isWanted ? 'used' : 'left'))
  const media = createMediaDesk(
    store,
    workers as unknown as Workers,
    { putScan, getScan: async () => undefined } as unknown as Shelf,
    { coding } as unknown as Questions,
    { reel: '', reelName: '', job: '' },
    onReady,
    openLists,
    askRescan,
  )
  return { store, media, opened, coding, putScan, onReady, openLists, askRescan }
}

it('a job whose scan is open already does not ask for it again', async () => {
  const { store, media, opened, askRescan, putScan, onReady } = desk()
  await media.openAny([new File([JOB_TEXT], 'orlop.json')])
  expect(store.getState().media).toBe('missing')
  await media.openReel([SCAN])
  expect(store.getState().media).toBe('ready')
  await media.openAny([new File([JOB_TEXT], 'orlop.json')])
  expect(store.getState().media).toBe('ready')
  expect(opened).toEqual([SCAN])
  expect(askRescan).not.toHaveBeenCalled()
  expect(putScan).toHaveBeenLastCalledWith(store.getState().shelfKey, [SCAN])
  expect(onReady).toHaveBeenCalledTimes(2)
})

it('a job of another scan than the open one says that its scan is missing', async () => {
  const { store, media } = desk({ isWanted: true })
  await media.openAny([new File([JOB_TEXT], 'orlop.json')])
  await media.openReel([OTHER])
  expect(store.getState().media).toBe('ready')
  await media.openAny([new File([JOB_TEXT], 'orlop.json')])
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
  await media.openAny([new File([JOB_TEXT], 'orlop.json')])
  await media.openAny([new File(['{}'], 'broken.json'), OTHER])
  expect(jobOf(store.getState())).toEqual(sampleJob())
  expect(store.getState().notice?.says).toMatch(/^broken\.json: /u)
})

it('a reel that is not wanted after all leaves the open one on screen', async () => {
  const { store, media, opened } = desk({ isAnswered: false })
  await media.openAny([new File([JOB_TEXT], 'orlop.json')])
  await media.openReel([SCAN])
  await media.openReel([OTHER])
  expect(store.getState().media).toBe('ready')
  expect(jobOf(store.getState())).toEqual(sampleJob())
  expect(opened).toEqual([SCAN, OTHER, SCAN])
})

const LIST = new File(['TITLE: ORLOP'], 'orlop.edl')

it('a list that is dropped on a job goes to be looked at, and the job and its scan stay', async () => {
  const { store, media, opened, openLists } = desk()
  await media.openAny([SCAN, new File([JOB_TEXT], 'orlop.json')])
  await media.openAny([LIST])
  expect(openLists).toHaveBeenCalledExactlyOnceWith([LIST])
  expect(opened).toEqual([SCAN])
  expect(jobOf(store.getState())).toEqual(sampleJob())
})

it('a reel and a list dropped together are opened one after the other', async () => {
  const { store, media, openLists } = desk()
  openLists.mockImplementation(async () => {
    expect(store.getState().media).toBe('ready')
  })
  await media.openAny([LIST, OTHER])
  expect(openLists).toHaveBeenCalledExactlyOnceWith([LIST])
})

it('where the reel dropped with it is not wanted, the list is not laid over another job', async () => {
  const { media, openLists } = desk({ isAnswered: false })
  await media.openAny([SCAN, new File([JOB_TEXT], 'orlop.json')])
  await media.openAny([LIST, OTHER])
  expect(openLists).not.toHaveBeenCalled()
})

it('another scan of the reel on screen is asked about while the old one can still be read', async () => {
  const { store, media, opened, askRescan } = desk()
  await media.openAny([SCAN, new File([JOB_TEXT], 'orlop.json')])
  await media.openRescan([OTHER])
  expect(askRescan.mock.calls[0]?.[0]).toEqual({ files: [SCAN], name: 'orlop-1.mov' })
  expect(askRescan.mock.calls[0]?.[2]).toContain('other.mov has 1000 frames')
  expect(opened).toEqual([SCAN, OTHER, SCAN])
  expect(store.getState().media).toBe('ready')
  expect(jobOf(store.getState())).toEqual(sampleJob())
})

it('used all the same, it is the scan of the reel; undo and redo bring the right one with them', async () => {
  const { store, media, opened, askRescan, putScan } = desk()
  askRescan.mockResolvedValue('used')
  await media.openAny([SCAN, new File([JOB_TEXT], 'orlop.json')])
  await media.openRescan([OTHER])
  expect(reelOf(store.getState())?.media.name).toBe('other.mov')
  expect(putScan).toHaveBeenLastCalledWith(store.getState().shelfKey, [OTHER])
  undo(store)
  await vi.waitFor(() => expect(store.getState().media).toBe('ready'))
  expect(jobOf(store.getState())).toEqual(sampleJob())
  redo(store)
  await vi.waitFor(() => expect(store.getState().media).toBe('ready'))
  expect(opened).toEqual([SCAN, OTHER, SCAN, OTHER])
})
