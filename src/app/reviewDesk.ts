import type { AnswerFile } from '../core/agreement/answerFile.ts'
import { applyAnswers } from '../core/agreement/applyAnswers.ts'
import { planAnswers } from '../core/agreement/planAnswers.ts'
import { signatureStands } from '../core/agreement/signatureStands.ts'
import { makeSigningKey } from '../core/agreement/signing.ts'
import type { Problem } from '../core/base/problem.ts'
import { readAnswerFile } from '../core/formats/answer/readAnswerFile.ts'
import { fileNameOf } from '../core/formats/listNames.ts'
import { addPack } from '../core/job/commands/addPack.ts'
import { cueEnd, cuesOfReel } from '../core/job/cueList.ts'
import type { Job, Reel } from '../core/job/job.ts'
import { type CueId, newPackId } from '../core/job/recordIds.ts'
import { setAgreeing } from '../store/agreeing.ts'
import type { AppStore } from '../store/appStore.ts'
import { perform } from '../store/document.ts'
import { tell, tellProblems } from '../store/notices.ts'
import { jobOf, reelOf } from '../store/queries.ts'
import type { PackOptions, ReviewDesk } from '../ui/services.ts'
import {
  gatherPack,
  type PackCues,
  type PackSources,
  packContents,
  packEstimate,
} from '../work/review/makePack.ts'
import { type PackStill, packPage, packZip } from '../work/review/packFile.ts'
import type { ReviewPictures, ReviewRequest } from '../work/review/reviewPictures.ts'
import { CallError } from '../work/rpc.ts'
import type { pickAnswerFiles, saveFile } from './files.ts'
import { REVIEW_PAGE } from './reviewPageText.ts'
import { isAbort, tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** Pixels along the longer side of a picture in a pack. */
const SIZE = 960

/** Cues that a size is reckoned from. */
const SAMPLE = 2

/** Makes review packs of the reel on screen, and takes their answers in. */
export const createReviewDesk = (
  store: AppStore,
  workers: Pick<Workers, 'stills'>,
  save: typeof saveFile,
  pick: typeof pickAnswerFiles,
): ReviewDesk => {
  let running: AbortController | undefined

  const pictures = async (request: ReviewRequest): Promise<ReviewPictures | undefined> => {
    try {
      return await workers.stills('reviewPictures', request)
    } catch (error) {
      // A frame that is damaged has no picture; its cue is left out and told.
      if (error instanceof CallError && error.problem) return undefined
      throw error
    }
  }
  /** What a pack asks of the scan: pictures, and clips of at most so many seconds. */
  const sourcesOf = (job: Job, reel: Reel, clipSeconds: number): PackSources => {
    const cues = cuesOfReel(job, reel.id)
    if (clipSeconds <= 0) return { pictures }
    return {
      pictures,
      clip: (cue, index) =>
        workers.stills('clip', {
          ...{ job: { ...job, passes: {}, held: {}, packs: {} }, reel, first: cue.first },
          ...{ end: cueEnd(cues, index, reel.frames), seconds: clipSeconds },
        }),
    }
  }
  const gather = (
    job: Job,
    reel: Reel,
    cues: readonly CueId[],
    sources: PackSources,
    size: number,
    signal: AbortSignal,
  ): Promise<PackCues> =>
    gatherPack(
      job,
      reel,
      { cues, size },
      sources,
      (done, total) => setAgreeing(store, { making: { done, total } }),
      signal,
    )
  const stillsOf = async (
    job: Job,
    reel: Reel,
    cues: readonly CueId[],
    signal: AbortSignal,
  ): Promise<readonly PackStill[]> => {
    const whole = await gather(job, reel, cues, { pictures }, Number.POSITIVE_INFINITY, signal)
    return whole.cues.flatMap(({ number, before, after }) => [
      { number, kind: 'before', address: before },
      { number, kind: 'after', address: after },
    ])
  }
  const make = async (
    job: Job,
    reel: Reel,
    { cues, madeFor, hasStills, clipSeconds }: PackOptions,
    signal: AbortSignal,
  ) => {
    const key = await makeSigningKey()
    const { cues: packed, left } = await gather(
      job,
      reel,
      cues,
      sourcesOf(job, reel, clipSeconds),
      SIZE,
      signal,
    )
    const particulars = { id: newPackId(), madeAt: new Date().toISOString(), madeFor }
    const contents = packContents(job, reel, packed, {
      ...particulars,
      key: key ? { algorithm: key.algorithm, privateKey: key.privateKey } : null,
    })
    const bytes = hasStills
      ? packZip(contents, REVIEW_PAGE, fileNameOf(reel), await stillsOf(job, reel, cues, signal))
      : packPage(contents, REVIEW_PAGE)
    const record = {
      ...particulars,
      cues: packed.length,
      key: key ? { algorithm: key.algorithm, publicKey: key.publicKey } : null,
    }
    const type = hasStills ? 'application/zip' : 'text/html'
    return { blob: new Blob([bytes], { type }), record, left }
  }
  const onReel = (): { readonly job: Job; readonly reel: Reel } | undefined => {
    const job = jobOf(store.getState())
    const reel = reelOf(store.getState())
    return job && reel && { job, reel }
  }
  const begin = (): AbortSignal => {
    running?.abort()
    running = new AbortController()
    return running.signal
  }
  const end = (signal: AbortSignal): void => {
    if (running?.signal === signal) setAgreeing(store, { making: undefined })
  }
  const take = async (files: readonly AnswerFile[]): Promise<void> => {
    const job = jobOf(store.getState())
    if (!job || files.length === 0) return
    const plan = planAnswers(job, files)
    if (!plan.ok) return tellProblems(store, plan.problems)
    const signatures = await Promise.all(
      plan.value.rows.map(({ cue, answer }) => signatureStands(job, cue, answer)),
    )
    setAgreeing(store, { takenIn: { plan: plan.value, signatures, choices: new Map() } })
  }
  const readAll = async (texts: readonly string[]): Promise<void> => {
    const problems: Problem[] = []
    const files: AnswerFile[] = []
    for (const text of texts) {
      const read = readAnswerFile(text)
      if (read.ok) files.push(read.value)
      else problems.push(...read.problems)
    }
    const [first, ...rest] = problems
    if (first) tellProblems(store, [first, ...rest])
    else await take(files)
  }

  return {
    estimate: async (ids, clipSeconds) => {
      const here = onReel()
      if (!here || ids.length === 0) return setAgreeing(store, { estimate: undefined })
      const { job, reel } = here
      const signal = begin()
      try {
        const { cues } = await gather(
          job,
          reel,
          ids.slice(0, SAMPLE),
          sourcesOf(job, reel, clipSeconds),
          SIZE,
          signal,
        )
        const wanted = new Set(ids)
        const chosen = cuesOfReel(job, reel.id).filter(({ id }) => wanted.has(id))
        if (!signal.aborted)
          setAgreeing(store, {
            estimate: { bytes: packEstimate(chosen, cues), of: `${ids.join()} ${clipSeconds}` },
          })
      } catch (error) {
        if (!isAbort(error)) tellError(store, error)
      } finally {
        end(signal)
      }
    },
    make: async (options) => {
      const here = onReel()
      if (!here) return
      const { job, reel } = here
      const signal = begin()
      const name = `${fileNameOf(reel)}-review.${options.hasStills ? 'zip' : 'html'}`
      let made: Awaited<ReturnType<typeof make>> | undefined
      try {
        const isSaved = await save(name, async () => {
          made = await make(job, reel, options, signal)
          return made.blob
        })
        if (!isSaved || !made) return
        const { record, left } = made
        perform(store, (now) => addPack(now, record))
        const [first, ...rest] = left
        if (first) tellProblems(store, [first, ...rest])
        else tell(store, `Saved ${name}. Send it; it opens in any browser, without a network.`)
      } catch (error) {
        if (!isAbort(error)) tellError(store, error)
      } finally {
        end(signal)
      }
    },
    stop: () => {
      running?.abort()
      setAgreeing(store, { making: undefined })
    },
    pickAnswers: async () => readAll(await Promise.all((await pick()).map((each) => each.text()))),
    readAnswer: (text) => readAll([text]),
    apply: () => {
      const { takenIn } = store.getState().agreeing
      if (!takenIn) return
      if (perform(store, (job) => applyAnswers(job, takenIn.plan, takenIn.choices)))
        setAgreeing(store, { takenIn: undefined })
    },
    leave: () => setAgreeing(store, { takenIn: undefined }),
  }
}
