import { problem } from '../core/base/problem.ts'
import { readJob } from '../core/formats/job/readJob.ts'
import { setReel } from '../core/job/commands/setReel.ts'
import type { Job, Reel } from '../core/job/job.ts'
import { newJob } from '../core/job/newJob.ts'
import { newCueId } from '../core/job/recordIds.ts'
import type { MediaFacts } from '../media/mediaFacts.ts'
import { utf8Text } from '../media/textOfBytes.ts'
import type { AppStore } from '../store/appStore.ts'
import { perform, showJob } from '../store/document.ts'
import { tell, tellProblems } from '../store/notices.ts'
import { cuesOf, reelOf } from '../store/queries.ts'
import type { MediaState } from '../store/state.ts'
import { rescanFacts } from '../work/rescanFacts.ts'
import { isListFile } from './importDesk.ts'
import type { Questions } from './questions.ts'
import { reelFromFacts, timecodeNotTaken } from './reelFromFacts.ts'
import type { OpenScan, RescanDesk, Scan } from './rescanDesk.ts'
import type { Shelf } from './shelf.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

export type MediaDesk = {
  readonly openReel: (files: readonly File[]) => Promise<void>
  readonly openAny: (files: readonly File[]) => Promise<void>
  /** Opens another scan for the job on screen. */
  readonly openRescan: (files: readonly File[]) => Promise<void>
  readonly openSample: () => Promise<void>
  readonly openShelved: (key: string) => Promise<void>
  readonly isSample: () => boolean
  /** The files of the scan that is open. */
  readonly scanFiles: () => readonly File[] | undefined
}

export type Sample = { readonly reel: string; readonly reelName: string; readonly job: string }

const isJobFile = (file: File): boolean => /\.json$/iu.test(file.name)

/** Whether a scan is the one a reel of a job was made from, as far as the job can tell. */
const isSameScan = (reel: Reel, facts: MediaFacts): boolean =>
  reel.frames === facts.frames &&
  reel.media.width === facts.width &&
  reel.media.height === facts.height &&
  reel.media.bytes === facts.bytes

/** How a scan differs from the one a reel was made from. */
const differenceText = ({ media, frames }: Reel, facts: MediaFacts): string =>
  `The job was made from ${media.name} with ${frames} frames of ${media.width} × ${media.height}; ${facts.name} has ${facts.frames} frames of ${facts.width} × ${facts.height}. Its cues may fall on other pictures.`

/** Opens reels and jobs, and brings the two together. */
export const createMediaDesk = (
  store: AppStore,
  workers: Workers,
  shelf: Shelf,
  questions: Questions,
  sample: Sample,
  onReady: () => void,
  openLists: (files: readonly File[]) => Promise<void>,
  askRescan: RescanDesk['ask'],
): MediaDesk => {
  let isSample = false
  /** The scan the workers have open, whether or not a job is on screen with it. */
  let scan: OpenScan | undefined
  /** The one that was open before another scan took its place. */
  let earlier: OpenScan | undefined

  const media = (state: MediaState): void => store.setState({ media: state })

  /** Opens the files in every worker; undefined (and told) where they cannot be read. */
  const openEverywhere = async (files: readonly File[]): Promise<MediaFacts | undefined> => {
    const before = store.getState().media
    media('opening')
    try {
      const opened = await workers.screen('open', { files })
      if (!opened.ok) {
        tellProblems(store, opened.problems)
        media(before)
        return undefined
      }
      await Promise.all([workers.passes('open', { files }), workers.stills('open', { files })])
      scan = { files, facts: opened.value }
      return opened.value
    } catch (error) {
      tellError(store, error)
      media(before)
      return undefined
    }
  }
  /** Goes back to the scan that was open before, where another turned out not to be wanted. */
  const goBackTo = async (before: OpenScan | undefined, state: MediaState): Promise<void> => {
    if (state === 'ready' && before && (await openEverywhere(before.files))) ready()
    else media(store.getState().history ? 'missing' : 'none')
  }
  const ready = (): void => {
    media('ready')
    onReady()
  }
  const show = (job: Job, key: string, isTheSample: boolean): void => {
    isSample = isTheSample
    showJob(store, job, key)
  }
  const newKey = (): string => crypto.randomUUID()

  const startJob = async (files: readonly File[]): Promise<void> => {
    const before = { scan, state: store.getState().media }
    const facts = await openEverywhere(files)
    if (!facts) return
    const answer = await questions.coding(facts)
    if (!answer) {
      await goBackTo(before.scan, before.state)
      return
    }
    const reel = reelFromFacts(facts, answer)
    const key = newKey()
    show(newJob(reel.name, reel, newCueId()), key, false)
    const says = timecodeNotTaken(facts, reel)
    if (says !== undefined) tell(store, says)
    ready()
    await shelf.putScan(key, files).catch((error) => tellError(store, error))
  }

  /** The scan a reel was made from, where it is open or this browser has a copy. */
  const scanOf = async (reel: Reel): Promise<Scan['files'] | undefined> => {
    if (scan && isSameScan(reel, scan.facts)) return scan.files
    const { shelfKey } = store.getState()
    if (shelfKey === undefined) return undefined
    const kept = await shelf.getScan(shelfKey).catch(() => undefined)
    const bytes = kept?.reduce((sum, { size }) => sum + size, 0)
    return bytes === reel.media.bytes ? kept : undefined
  }
  /** Tells where another scan is too short for the cues as they are. */
  const isTooShort = ({ name, frames }: MediaFacts): boolean => {
    const past = cuesOf(store.getState()).filter(({ first }) => first >= frames).length
    if (past === 0) return false
    const says = `${name} has ${frames} frames, and ${past} of the cues ${past === 1 ? 'begins' : 'begin'} past its end: let the cues follow their pictures, or a list.`
    tellProblems(store, [problem('conflict', says)])
    return true
  }
  /** Another scan for the cues as they are; the reel's particulars follow it. */
  const takeAsItIs = ({ id }: Reel, facts: MediaFacts): void => {
    const edit = (before: Reel) => ({ ...before, ...rescanFacts(before, facts) })
    perform(store, (job) => setReel(job, id, edit, 'Another scan'))
  }
  /** Asks whether to use another scan, or to let the cues follow; false where it is not wanted. */
  const isWanted = async (reel: Reel, before: Scan['files'] | undefined): Promise<boolean> => {
    if (!scan) return false
    const { files, facts } = scan
    const made = before && { files: before, name: reel.media.name }
    const answer = await askRescan(made, { files, facts }, differenceText(reel, facts))
    if (answer === 'left' || (answer === 'used' && isTooShort(facts))) return false
    if (answer === 'used') takeAsItIs(reel, facts)
    await workers.passes('open', { files })
    return true
  }
  /** Brings a scan to the job on screen, asking where it is not the one the job was made from. */
  const relink = async (files: readonly File[]): Promise<void> => {
    const reel = reelOf(store.getState())
    const before = { scan, state: store.getState().media }
    const made = reel && (await scanOf(reel))
    const facts = await openEverywhere(files)
    if (!facts || !reel) return
    if (!isSameScan(reel, facts)) {
      if (!(await isWanted(reel, made))) {
        await goBackTo(before.scan, before.state)
        return
      }
      isSample = false
      earlier = before.scan
    }
    ready()
    await keepScan(files)
  }
  /** The scan goes with the reel: undo and redo bring the one back that the reel is of then. */
  store.subscribe((state, before) => {
    const [reel, was] = [reelOf(state), reelOf(before)]
    if (!scan || !reel || !was || reel.media === was.media || state.media !== 'ready') return
    if (state.shelfKey !== before.shelfKey) return
    if (isSameScan(reel, scan.facts) || !isSameScan(was, scan.facts)) return
    const other = earlier
    if (!other || !isSameScan(reel, other.facts)) {
      media('missing')
      return
    }
    earlier = scan
    void openEverywhere(other.files).then(async (facts) => {
      if (!facts) {
        media('missing')
        return
      }
      ready()
      await keepScan(other.files)
    })
  })

  const keepScan = async (files: readonly File[]): Promise<void> => {
    const { shelfKey } = store.getState()
    if (shelfKey !== undefined && !isSample)
      await shelf.putScan(shelfKey, files).catch((error) => tellError(store, error))
  }

  /** Where the scan of the job on screen is open already it is not asked for again. */
  const relinkToScan = async (): Promise<void> => {
    const reel = reelOf(store.getState())
    if (!scan || !reel || !isSameScan(reel, scan.facts)) return
    ready()
    await keepScan(scan.files)
  }

  const openReel = async (files: readonly File[]): Promise<void> => {
    if (files.length === 0) return
    const { history, media: state } = store.getState()
    await (history && state === 'missing' ? relink(files) : startJob(files))
  }
  /** Shows the job of a file; false (and told) where it cannot be read. */
  const showJobText = (text: string, name: string): boolean => {
    const job = readJob(text)
    if (job.ok) show(job.value, newKey(), false)
    else
      tellProblems(
        store,
        job.problems.map((problem) => ({ ...problem, says: `${name}: ${problem.says}` })),
      )
    return job.ok
  }
  const openJobText = async (text: string, name: string): Promise<void> => {
    if (showJobText(text, name)) await relinkToScan()
  }
  const openJobOrReel = async (files: readonly File[]): Promise<void> => {
    const jobFile = files.find(isJobFile)
    const reelFiles = files.filter((file) => file !== jobFile)
    if (!jobFile) await openReel(reelFiles)
    else {
      const text = utf8Text(new Uint8Array(await jobFile.arrayBuffer()), jobFile.name)
      if (!text.ok) tellProblems(store, text.problems)
      else if (reelFiles.length === 0) await openJobText(text.value, jobFile.name)
      else if (showJobText(text.value, jobFile.name)) await relink(reelFiles)
    }
  }
  const fetchSampleReel = async (): Promise<File> => {
    const response = await fetch(sample.reel)
    return new File([await response.blob()], sample.reelName)
  }
  return {
    isSample: () => isSample,
    scanFiles: () => (store.getState().media === 'ready' ? scan?.files : undefined),
    openReel,
    openRescan: async (files) => {
      if (files.length > 0 && reelOf(store.getState())) await relink(files)
    },
    openAny: async (files) => {
      const areLists = await Promise.all(files.map(isListFile))
      const lists = files.filter((_, i) => areLists[i])
      const others = files.filter((_, i) => !areLists[i])
      const before = store.getState()
      if (others.length > 0) await openJobOrReel(others)
      const { shelfKey } = store.getState()
      const isOpened = shelfKey !== before.shelfKey || before.media === 'missing'
      if (lists.length > 0 && (others.length === 0 || isOpened)) await openLists(lists)
    },
    openSample: async () => {
      media('opening')
      try {
        const text = await (await fetch(sample.job)).text()
        const job = readJob(text)
        if (!job.ok) {
          media('none')
          tellProblems(store, job.problems)
          return
        }
        const file = await fetchSampleReel()
        show(job.value, newKey(), true)
        await relink([file])
      } catch (error) {
        media('none')
        tellError(store, error)
      }
    },
    openShelved: async (key) => {
      try {
        const entry = await shelf.get(key)
        if (!entry) return
        const job = readJob(entry.text)
        if (!job.ok) {
          tellProblems(store, job.problems)
          return
        }
        show(job.value, key, entry.isSample)
        const files = entry.isSample ? [await fetchSampleReel()] : await shelf.getScan(key)
        if (files) await relink(files)
      } catch (error) {
        tellError(store, error)
      }
    },
  }
}
