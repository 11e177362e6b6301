import type { Result } from '../core/base/result.ts'
import { fileNameOf } from '../core/formats/listNames.ts'
import { type PassPlan, passPlan } from '../core/transfer/passPlan.ts'
import { TRANSFER_FORMAT_FACTS } from '../core/transfer/transferSettings.ts'
import type { AppStore } from '../store/appStore.ts'
import { tell, tellProblems } from '../store/notices.ts'
import { jobOf, reelOf } from '../store/queries.ts'
import { setTransferring } from '../store/transferring.ts'
import type { TransferDesk } from '../ui/services.ts'
import { BEGUN_BEFORE } from '../work/pass/beginPass.ts'
import { clearFinished } from '../work/pass/finishedFiles.ts'
import { passKey } from '../work/pass/passIdentity.ts'
import { openPassStore } from '../work/pass/passStore.ts'
import type { PassNews, PassTarget } from '../work/passCalls.ts'
import { download } from './files.ts'
import { type PassRunning, startPass } from './passRun.ts'
import { openPassShelf, type PassShelf } from './passShelf.ts'
import { askTarget, keptTarget } from './passTargets.ts'
import { recordPass } from './recordPass.ts'
import { takeScanChecksum } from './scanChecksumTaking.ts'
import { isAbort, tellError } from './tellError.ts'
import { findUnfinished } from './unfinishedPass.ts'
import type { Workers } from './workers.ts'

/** What the desk asks of the browser; tests put their own in its place. */
export type TransferOutside = {
  readonly askTarget: typeof askTarget
  readonly keptTarget: typeof keptTarget
  readonly startPass: typeof startPass
  readonly download: (name: string, file: Blob) => void
  readonly shelf: PassShelf
}

const browserOutside = (): TransferOutside => ({
  ...{ askTarget, keptTarget, startPass, download },
  shelf: openPassShelf(),
})

const handleOf = (target: PassTarget): FileSystemHandle | undefined =>
  target.kind === 'folder' ? target.folder : target.file

/**
 * Makes the transfer of the reel on screen. A pass works from the job as it was when it was begun,
 * whatever is changed meanwhile.
 */
export const createTransferDesk = (
  store: AppStore,
  workers: Pick<Workers, 'stills'>,
  scanFiles: () => readonly File[] | undefined,
  outside: TransferOutside = browserOutside(),
): TransferDesk => {
  let running: PassRunning | undefined
  let isAsking = false

  const planNow = (): Result<PassPlan> | undefined => {
    const state = store.getState()
    const job = jobOf(state)
    const reel = reelOf(state)
    return job && reel && passPlan(job, reel.id)
  }
  const storeFor = async (plan: PassPlan) =>
    openPassStore(await navigator.storage.getDirectory(), passKey(plan.reel.id))

  const look = async (): Promise<void> => {
    try {
      const { quota, usage } = await navigator.storage.estimate()
      setTransferring(store, { room: quota === undefined ? undefined : quota - (usage ?? 0) })
      if (running) return
      await clearFinished(await navigator.storage.getDirectory())
      const plan = planNow()
      const unfinished = plan?.ok ? await findUnfinished(plan.value) : undefined
      setTransferring(store, { unfinished })
    } catch (error) {
      tellError(store, error)
    }
  }
  const forget = async (plan: PassPlan): Promise<void> => {
    await (await storeFor(plan)).discard()
    await outside.shelf.remove(passKey(plan.reel.id))
  }
  const onNews = (name: string) => (news: PassNews) => {
    const { phase, pace, doneBefore, heldFrames } = news
    const isPaused = store.getState().transferring.run?.isPaused ?? false
    const run = { name, phase, progress: pace, isPaused, doneBefore, heldFrames }
    setTransferring(store, { run })
  }
  const make = async (plan: PassPlan, target: PassTarget, goesOn: boolean): Promise<void> => {
    const scan = scanFiles()
    if (!scan) return
    if (!goesOn && (await (await storeFor(plan)).begun())) {
      tellProblems(store, [BEGUN_BEFORE])
      await look()
      return
    }
    const { shelfKey } = store.getState()
    const { reel, settings } = plan
    const stem = fileNameOf(reel)
    const fileName = `${stem}.${TRANSFER_FORMAT_FACTS[settings.format].extension}`
    const key = passKey(reel.id)
    const name = handleOf(target)?.name ?? fileName
    const { frames: total } = plan.timeline
    const progress = { done: 0, total, framesPerSecond: 0, secondsLeft: undefined }
    setTransferring(store, {
      run: { name, phase: 'writing', progress, isPaused: false, doneBefore: 0, heldFrames: [] },
      unfinished: undefined,
      outcome: undefined,
    })
    try {
      navigator.storage.persist().catch(() => {})
      const handle = handleOf(target)
      if (handle && !goesOn) await outside.shelf.put(key, handle)
      const order = { plan, scan, key, stem, fileName, target, goesOn }
      running = outside.startPass(order, onNews(name))
      const made = await running.made
      if (!made.ok) {
        tellProblems(store, made.problems)
        return
      }
      const { file, output } = made.value
      if (file) outside.download(output.name, file)
      if (recordPass(store, plan, made.value, shelfKey)) await forget(plan)
    } catch (error) {
      if (isAbort(error)) tell(store, 'The pass is stopped. What is written is kept.')
      else tellError(store, error)
    } finally {
      running = undefined
      setTransferring(store, { run: undefined })
      await look()
    }
  }
  const begin = async (
    goesOn: boolean,
    ask: (plan: PassPlan, fileName: string) => Promise<Result<PassTarget | undefined>>,
  ): Promise<void> => {
    const plan = planNow()
    if (!plan || running || isAsking || !scanFiles()) return
    if (!plan.ok) {
      tellProblems(store, plan.problems)
      return
    }
    isAsking = true
    try {
      const { reel, settings } = plan.value
      const { extension } = TRANSFER_FORMAT_FACTS[settings.format]
      const target = await ask(plan.value, `${fileNameOf(reel)}.${extension}`)
      if (!target.ok) tellProblems(store, target.problems)
      else if (target.value) await make(plan.value, target.value, goesOn)
    } catch (error) {
      tellError(store, error)
    } finally {
      isAsking = false
    }
  }
  const setPaused = (isPaused: boolean): void => {
    const { run } = store.getState().transferring
    if (!running || !run) return
    running.pause(isPaused)
    setTransferring(store, { run: { ...run, isPaused } })
  }
  return {
    takeChecksum: () => takeScanChecksum(store, workers),
    look,
    start: () => begin(false, outside.askTarget),
    goOn: () =>
      begin(true, async (plan, fileName) =>
        outside.keptTarget(plan, await outside.shelf.get(passKey(plan.reel.id)), fileName),
      ),
    pause: () => setPaused(true),
    unpause: () => setPaused(false),
    stop: () => running?.stop(),
    discard: async () => {
      const plan = planNow()
      if (!plan?.ok || running) return
      try {
        await forget(plan.value)
      } catch (error) {
        tellError(store, error)
      }
      await look()
    },
  }
}
