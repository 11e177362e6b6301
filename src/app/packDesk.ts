import { makeSigningKey } from '../core/agreement/signing.ts'
import { fileNameOf } from '../core/formats/listNames.ts'
import { addPack } from '../core/job/commands/addPack.ts'
import { cueEnd, cuesOfReel } from '../core/job/cueList.ts'
import type { Cue, Job, Reel } from '../core/job/job.ts'
import { newPackId } from '../core/job/recordIds.ts'
import { setAgreeing } from '../store/agreeing.ts'
import type { AppStore } from '../store/appStore.ts'
import { perform } from '../store/document.ts'
import { tell, tellProblems } from '../store/notices.ts'
import { jobOf, reelOf } from '../store/queries.ts'
import type { PackOptions, ReviewDesk } from '../ui/services.ts'
import { gatherPack, type PackSources, packContents } from '../work/review/makePack.ts'
import { packEstimate, packSample } from '../work/review/packEstimate.ts'
import { packPage, packZip } from '../work/review/packFile.ts'
import { gatherStills } from '../work/review/packStills.ts'
import type { ReviewPictures, ReviewRequest } from '../work/review/reviewPictures.ts'
import { CallError } from '../work/rpc.ts'
import type { saveFile } from './files.ts'
import { REVIEW_PAGE } from './reviewPageText.ts'
import { createSameScan } from './sameScan.ts'
import { isAbort, tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** Pixels along the longer side of a picture in a pack. */
const SIZE = 960

/** Makes review packs of the reel on screen, and tells how large one would be. */
export const createPackDesk = (
  store: AppStore,
  workers: Pick<Workers, 'stills'>,
  save: typeof saveFile,
): Pick<ReviewDesk, 'estimate' | 'make' | 'stop'> => {
  const scan = createSameScan(store, 'The review pack')
  let estimating: AbortController | undefined
  let making: AbortController | undefined

  const pictures =
    (reel: Reel, signal: AbortSignal) =>
    async (request: ReviewRequest): Promise<ReviewPictures | undefined> => {
      try {
        const made = await workers.stills('reviewPictures', request, { signal })
        scan.assert(reel)
        return made
      } catch (error) {
        scan.assert(reel)
        // A frame that is damaged has no picture; its cue is left out and told.
        if (error instanceof CallError && error.problem) return undefined
        throw error
      }
    }
  /** What a pack asks of the scan: pictures, and clips of at most so many seconds. */
  const sourcesOf = (job: Job, reel: Reel, seconds: number, signal: AbortSignal): PackSources => {
    const cues = cuesOfReel(job, reel.id)
    const lean = { ...job, passes: {}, held: {}, packs: {} }
    const clip = async (cue: Cue, index: number): Promise<string | null> => {
      const stretch = { first: cue.first, end: cueEnd(cues, index, reel.frames), seconds }
      const made = await workers.stills('clip', { job: lean, reel, ...stretch }, { signal })
      scan.assert(reel)
      return made
    }
    return { pictures: pictures(reel, signal), ...(seconds > 0 && { clip }) }
  }
  const make = async (
    job: Job,
    reel: Reel,
    { cues, madeFor, hasStills, clipSeconds }: PackOptions,
    signal: AbortSignal,
  ) => {
    const key = await makeSigningKey()
    const sources = sourcesOf(job, reel, clipSeconds, signal)
    const onCue = (done: number, total: number) => setAgreeing(store, { making: { done, total } })
    const { cues: packed, left } = await gatherPack(
      job,
      reel,
      { cues, size: SIZE },
      sources,
      onCue,
      signal,
    )
    const [first] = left
    if (packed.length === 0 && first) throw new CallError(first.says, first)
    const particulars = { id: newPackId(), madeAt: new Date().toISOString(), madeFor }
    const contents = packContents(job, reel, packed, {
      ...particulars,
      key: key ? { algorithm: key.algorithm, privateKey: key.privateKey } : null,
    })
    const stills = hasStills ? await gatherStills(job, reel, cues, sources, onCue, signal) : []
    const bytes = hasStills
      ? packZip(contents, REVIEW_PAGE, fileNameOf(reel), stills)
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

  return {
    estimate: async (wish) => {
      estimating?.abort()
      const here = onReel()
      if (!here || wish.cues.length === 0) return
      const { job, reel } = here
      estimating = new AbortController()
      const { signal } = estimating
      const wanted = new Set(wish.cues)
      const chosen = cuesOfReel(job, reel.id).filter(({ id }) => wanted.has(id))
      const some = packSample(chosen).map(({ id }) => id)
      const sources = sourcesOf(job, reel, wish.clipSeconds, signal)
      try {
        const sample = await gatherPack(
          job,
          reel,
          { cues: some, size: SIZE },
          sources,
          undefined,
          signal,
        )
        const stills = wish.hasStills
          ? await gatherStills(job, reel, some, sources, undefined, signal)
          : []
        const bytes = packEstimate(chosen, sample.cues, stills)
        setAgreeing(store, { estimate: bytes === undefined ? undefined : { bytes, of: wish } })
      } catch (error) {
        if (!isAbort(error) && !scan.isAbandoned(error)) tellError(store, error)
      }
    },
    make: async (options) => {
      const here = onReel()
      if (!here || making) return
      const { job, reel } = here
      estimating?.abort()
      making = new AbortController()
      const { signal } = making
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
        tellError(store, error)
      } finally {
        making = undefined
        setAgreeing(store, { making: undefined })
      }
    },
    stop: () => making?.abort(),
  }
}
