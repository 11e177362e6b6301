import { expect, test } from 'vitest'
import { startPass } from '../../../src/app/passRun.ts'
import { openPassShelf } from '../../../src/app/passShelf.ts'
import { createTransferDesk, type TransferOutside } from '../../../src/app/transferDesk.ts'
import { ok } from '../../../src/core/base/result.ts'
import { setReel } from '../../../src/core/job/commands/setReel.ts'
import type { PassRecord } from '../../../src/core/transfer/passRecord.ts'
import type { TransferSettings } from '../../../src/core/transfer/transferSettings.ts'
import { type AppStore, createAppStore } from '../../../src/store/appStore.ts'
import { perform, showJob } from '../../../src/store/document.ts'
import { jobOf } from '../../../src/store/queries.ts'
import type { Transferring } from '../../../src/store/transferring.ts'
import { passIdentity, passKey } from '../../../src/work/pass/passIdentity.ts'
import { openPassStore } from '../../../src/work/pass/passStore.ts'
import type { PassTarget } from '../../../src/work/passCalls.ts'
import { clipJob, newFolder } from './clipPass.ts'

const CLIP = 'numbered/h264-bframes-24.mp4'
const HEAD = { bars: 2, slate: 0, leader: 2 }

/** A job on a clip with its desk; what is asked of the person is answered with `target`. */
const deskFor = async (
  settings: Partial<TransferSettings>,
  target: PassTarget | undefined,
  change: Partial<TransferOutside> = {},
) => {
  const { job, reel, plan, file } = await clipJob(CLIP, { head: HEAD, ...settings })
  const store = createAppStore()
  showJob(store, job, 'key')
  store.setState({ media: 'ready' })
  const downloads: { name: string; bytes: number }[] = []
  const outside: TransferOutside = {
    askTarget: async () => ok(target),
    keptTarget: async (_, kept) =>
      ok(
        kept?.kind === 'directory'
          ? { kind: 'folder', folder: kept as FileSystemDirectoryHandle }
          : { kind: 'file', file: undefined },
      ),
    startPass,
    download: (name, each) => void downloads.push({ name, bytes: each.size }),
    shelf: openPassShelf(),
    ...change,
  }
  const stills = () => Promise.reject(new Error('no stills are asked for'))
  const desk = createTransferDesk(store, { stills }, () => [file], outside)
  return { store, desk, reel, plan, file, downloads, outside }
}

const now = (store: AppStore): Transferring => store.getState().transferring

const until = (store: AppStore, isSo: (transferring: Transferring) => boolean): Promise<void> =>
  new Promise((resolve) => {
    const leave = store.subscribe(({ transferring }) => {
      if (!isSo(transferring)) return
      leave()
      resolve()
    })
  })

const passesOf = (store: AppStore): readonly PassRecord[] =>
  Object.values(jobOf(store.getState())?.passes ?? {})

test('a pass is written, read back, and recorded in the job; its file is handed over', async () => {
  const { store, desk, plan, downloads } = await deskFor(
    { format: 'h264' },
    { kind: 'file', file: undefined },
  )
  await desk.start()
  expect(store.getState().notice?.says).toMatch(/was read back as it should be/u)
  expect(now(store)).toMatchObject({ run: undefined, unfinished: undefined })
  expect(now(store).outcome?.standing).toBe('right')
  const [pass] = passesOf(store)
  const identity = passIdentity(plan)
  expect(pass).toMatchObject({
    reel: plan.reel.id,
    decided: identity.ok ? identity.value.decided : '',
    settings: plan.settings,
    output: { files: 1, frames: 156 },
    heldFrames: [],
  })
  expect(pass?.madeWith).toMatch(
    /^Reelwright \d+\.\d+\.\d+ in Chromium \d+, H\.264 at [\d.]+ Mbit/u,
  )
  expect(downloads).toEqual([{ name: pass?.output.name, bytes: pass?.output.bytes }])
})

test('where the person names a file, it is written there and not handed over again', async () => {
  const folder = await newFolder()
  const file = await folder.getFileHandle('harbour.webm', { create: true })
  const { store, desk, downloads } = await deskFor({ format: 'vp9' }, { kind: 'file', file })
  await desk.start()
  expect(now(store).outcome?.standing).toBe('right')
  expect(passesOf(store)[0]?.output.bytes).toBe((await file.getFile()).size)
  expect(downloads).toEqual([])
})

test('a person who does not want to after all is not asked again, and nothing is begun', async () => {
  const { store, desk } = await deskFor({ format: 'dpx' }, undefined)
  await desk.start()
  await desk.look()
  expect(now(store)).toMatchObject({ run: undefined, unfinished: undefined, outcome: undefined })
  expect(now(store).room).toBeGreaterThan(0)
})

test('a job edited while the pass runs does not change it', async () => {
  const folder = await newFolder()
  const { store, desk, plan, reel } = await deskFor({ format: 'dpx' }, { kind: 'folder', folder })
  const made = desk.start()
  await until(store, ({ run }) => (run?.progress.done ?? 0) > 0)
  const rename = () =>
    perform(store, (job) =>
      setReel(
        job,
        reel.id,
        (each) => ({ ...each, transfer: { ...each.transfer, burnsTimecode: true } }),
        'Burn in timecode',
      ),
    )
  expect(rename()).toBe(true)
  await made
  const identity = passIdentity(plan)
  expect(passesOf(store)[0]).toMatchObject({
    decided: identity.ok ? identity.value.decided : '',
    settings: { burnsTimecode: false },
  })
  expect(now(store).outcome?.standing).toBe('right')
  expect(jobOf(store.getState())?.reels[reel.id]?.transfer.burnsTimecode).toBe(true)
})

test('stopped, a pass is found again and gone on with', async () => {
  const folder = await newFolder()
  const { store, desk, plan } = await deskFor({ format: 'dpx' }, { kind: 'folder', folder })
  const stopped = desk.start()
  await until(store, ({ run }) => (run?.progress.done ?? 0) > 60)
  desk.stop()
  await stopped
  expect(store.getState().notice?.says).toBe('The pass is stopped. What is written is kept.')
  const { unfinished, run } = now(store)
  expect(run).toBeUndefined()
  expect(unfinished).toMatchObject({ name: folder.name, total: 156, hindrance: undefined })
  expect(unfinished?.done).toBeGreaterThanOrEqual(48)

  await desk.start()
  expect(store.getState().notice?.says).toMatch(/was begun and not finished/u)
  let doneBefore = 0
  store.subscribe(({ transferring }) => {
    doneBefore = Math.max(doneBefore, transferring.run?.doneBefore ?? 0)
  })
  await desk.goOn()
  expect(doneBefore).toBeGreaterThanOrEqual(48)
  expect(now(store).outcome?.standing).toBe('right')
  expect(passesOf(store)[0]?.begunAt).toBe(unfinished?.begunAt)
  const root = await navigator.storage.getDirectory()
  expect(await openPassStore(root, passKey(plan.reel.id)).begun()).toBeUndefined()
})

test('changed, its job stands in the way in words; discarded, the pass is gone', async () => {
  const folder = await newFolder()
  const { store, desk, reel } = await deskFor({ format: 'dpx' }, { kind: 'folder', folder })
  const stopped = desk.start()
  await until(store, ({ run }) => (run?.progress.done ?? 0) > 0)
  desk.stop()
  await stopped
  const slower = { limiting: 'hard' } as const
  perform(store, (job) =>
    setReel(
      job,
      reel.id,
      (each) => ({ ...each, transfer: { ...each.transfer, ...slower } }),
      'Limit hard',
    ),
  )
  await desk.look()
  expect(now(store).unfinished?.hindrance).toMatch(/has changed since this pass was begun/u)
  await desk.discard()
  expect(now(store).unfinished).toBeUndefined()
})

test('a worker that the browser ends is told of, and the pass is gone on with', async () => {
  let worker: Worker | undefined
  const start: typeof startPass = (order, onNews) =>
    startPass(order, onNews, () => {
      worker = new Worker(new URL('../../../src/app/worker/passWorker.ts', import.meta.url), {
        type: 'module',
      })
      return worker
    })
  const { store, desk } = await deskFor(
    { format: 'av1' },
    { kind: 'file', file: undefined },
    { startPass: start },
  )
  const made = desk.start()
  await until(store, ({ run }) => (run?.progress.done ?? 0) > 60)
  worker?.terminate()
  await made
  expect(store.getState().notice?.says).toMatch(/was ended by the browser/u)
  expect(passesOf(store)).toEqual([])
  expect(now(store).outcome).toBeUndefined()
  await desk.goOn()
  expect(now(store).outcome?.standing).toBe('right')
})

test('paused, it says so and stays where it is until it goes on', async () => {
  const folder = await newFolder()
  const { store, desk } = await deskFor({ format: 'dpx' }, { kind: 'folder', folder })
  const made = desk.start()
  await until(store, ({ run }) => (run?.progress.done ?? 0) > 0)
  desk.pause()
  await new Promise((resolve) => setTimeout(resolve, 300))
  const { run } = now(store)
  expect(run?.isPaused).toBe(true)
  await new Promise((resolve) => setTimeout(resolve, 300))
  expect(now(store).run?.progress.done).toBe(run?.progress.done)
  desk.unpause()
  expect(now(store).run?.isPaused).toBe(false)
  await made
  expect(now(store).outcome?.standing).toBe('right')
})
