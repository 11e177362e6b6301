import { type Problem, problem } from '../core/base/problem.ts'
import { applyReconform } from '../core/conform/applyReconform.ts'
import { planReconform } from '../core/conform/planReconform.ts'
import { planRecut } from '../core/conform/planRecut.ts'
import { reconformReport } from '../core/conform/reconformReport.ts'
import { recutReel } from '../core/conform/recutReel.ts'
import type { ReelPrints } from '../core/conform/reelPrints.ts'
import { edlReelNameIn } from '../core/formats/edl/edlReelName.ts'
import { fileNameOf } from '../core/formats/listNames.ts'
import { newCueId } from '../core/job/recordIds.ts'
import type { MediaFacts } from '../media/mediaFacts.ts'
import type { AppStore } from '../store/appStore.ts'
import { endGesture, perform } from '../store/document.ts'
import { tell, tellProblems } from '../store/notices.ts'
import { currentCue, jobOf, reelOf } from '../store/queries.ts'
import { closeRescan, offerRescan, rescanCountText, setRescanStage } from '../store/rescan.ts'
import { movePlayhead } from '../store/session.ts'
import type { RescanChoices } from '../ui/services.ts'
import { rescanFacts } from '../work/rescanFacts.ts'
import { pickListFile, saveFile } from './files.ts'
import { readListFile } from './readListFile.ts'
import { isAbort, tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** The files of a scan, and what they are called. */
export type Scan = { readonly files: readonly File[]; readonly name: string }

/** A scan that was opened, and what its file states. */
export type OpenScan = { readonly files: readonly File[]; readonly facts: MediaFacts }

/** What was decided about another scan: used as it is, followed by the cues, or not wanted. */
export type RescanAnswer = 'used' | 'followed' | 'left'

export type RescanDesk = RescanChoices & {
  /** Asks what is to be done with another scan than `before`, where that can be read, and does it. */
  readonly ask: (before: Scan | undefined, fresh: OpenScan, says: string) => Promise<RescanAnswer>
}

/** Why nothing follows a list. */
const ofNoCue = (name: string, source: string): Problem =>
  problem(
    'not-found',
    `${name} has no event whose source is a cue of this reel: event lines call the reel ${source}, or by the name of its scan.`,
  )

/** Lets cues follow their pictures to another scan of their reel. */
export const createRescanDesk = (
  store: AppStore,
  passes: Workers['passes'],
  save: typeof saveFile = saveFile,
  pick: () => Promise<File | undefined> = pickListFile,
): RescanDesk => {
  let asked:
    | {
        readonly before: Scan | undefined
        readonly fresh: OpenScan
        answer: (answer: RescanAnswer) => void
      }
    | undefined
  let looking: AbortController | undefined

  const finish = (answer: RescanAnswer): void => {
    looking?.abort()
    closeRescan(store)
    asked?.answer(answer)
    asked = undefined
  }
  /** Reads a scan once for its prints; the worker that makes passes keeps it open. */
  const printsOf = async (
    files: Scan['files'],
    at: string,
    signal: AbortSignal,
  ): Promise<ReelPrints> => {
    setRescanStage(store, { kind: 'looking', at, progress: undefined })
    const opened = await passes('open', { files }, { signal })
    if (!opened.ok) throw new Error(opened.problems[0].says)
    return passes('fingerprint', undefined, {
      signal,
      onProgress: (progress) => {
        if (!signal.aborted) setRescanStage(store, { kind: 'looking', at, progress })
      },
    })
  }
  const look = async (signal: AbortSignal): Promise<void> => {
    const { before, fresh } = asked ?? {}
    const job = jobOf(store.getState())
    const reel = reelOf(store.getState())
    if (!before || !fresh || !job || !reel) return
    const old = await printsOf(before.files, `Looking at ${before.name}, as it was:`, signal)
    const now = await printsOf(fresh.files, `Looking at ${fresh.facts.name}:`, signal)
    const at = 'Finding the pictures of each cue…'
    setRescanStage(store, { kind: 'looking', at, progress: undefined })
    const stretches = await passes('findStretches', { old, fresh: now }, { signal })
    const plan = planReconform(job, reel.id, old, now, stretches)
    if (plan) setRescanStage(store, { kind: 'found', plan })
  }
  return {
    ask: (before, fresh, says) => {
      finish('left')
      endGesture(store)
      offerRescan(store, fresh.facts.name, says, before !== undefined)
      return new Promise((resolve) => {
        asked = { before, fresh, answer: resolve }
      })
    },
    use: () => finish('used'),
    leave: () => finish('left'),
    follow: async () => {
      const stop = new AbortController()
      looking = stop
      try {
        await look(stop.signal)
      } catch (error) {
        if (!isAbort(error)) tellError(store, error)
        setRescanStage(store, { kind: 'asking' })
      } finally {
        if (looking === stop) looking = undefined
      }
    },
    followList: async () => {
      const file = await pick()
      const job = jobOf(store.getState())
      const reel = reelOf(store.getState())
      if (!file || !asked || !job || !reel) return
      const { facts } = asked.fresh
      const recut = rescanFacts(reel, facts)
      const list = await readListFile(file, { ...reel, ...recut })
      if (!list.ok) {
        tellProblems(store, list.problems)
        return
      }
      const plan = planRecut(job, reel.id, list.value, recutReel({ ...reel, ...recut }, list.value))
      if (plan?.rows.some(({ outcome }) => outcome !== 'lost'))
        setRescanStage(store, { kind: 'found', plan })
      else tellProblems(store, [ofNoCue(file.name, edlReelNameIn(job, reel.id))])
    },
    stop: () => looking?.abort(),
    apply: () => {
      const { rescan } = store.getState()
      const reel = reelOf(store.getState())
      if (!asked || !reel || rescan?.stage.kind !== 'found') return
      const { plan } = rescan.stage
      const facts = rescanFacts(reel, asked.fresh.facts)
      const cue = currentCue(store.getState())
      if (!perform(store, (job) => applyReconform(job, reel.id, plan, facts, newCueId))) return
      const after = cue && jobOf(store.getState())?.cues[cue.id]
      movePlayhead(store, after ? after.first : store.getState().playhead)
      const { name } = rescan
      finish('followed')
      tell(store, `On ${name}: ${rescanCountText(plan)}. Undo takes it back.`)
    },
    saveReport: async () => {
      const { rescan } = store.getState()
      if (rescan?.stage.kind !== 'found') return
      const { plan } = rescan.stage
      const name = `${fileNameOf(plan.reel)}-followed.txt`
      const text = reconformReport(plan)
      try {
        if (await save(name, () => new Blob([text], { type: 'text/plain' })))
          tell(store, `Saved ${name}.`)
      } catch (error) {
        tellError(store, error)
      }
    },
  }
}
