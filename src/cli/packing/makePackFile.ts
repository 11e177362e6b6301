import type { PackRecord } from '../../core/agreement/answer.ts'
import { makeSigningKey } from '../../core/agreement/signing.ts'
import { type Problem, problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { fileNameOf } from '../../core/formats/listNames.ts'
import { cueEnd, cuesOfReel } from '../../core/job/cueList.ts'
import type { Cue, Job, Reel } from '../../core/job/job.ts'
import { newPackId } from '../../core/job/recordIds.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import type { FrameSource } from '../../media/frameSource.ts'
import { MediaError } from '../../media/mediaError.ts'
import { encodeClip } from '../../media/node/encodeClip.ts'
import { jpegAddressNode } from '../../media/node/jpegAddressNode.ts'
import { makeClip } from '../../work/review/makeClip.ts'
import { gatherPack, type PackSources, packContents } from '../../work/review/makePack.ts'
import { packEstimate, packSample } from '../../work/review/packEstimate.ts'
import { packPage, packZip } from '../../work/review/packFile.ts'
import { gatherStills } from '../../work/review/packStills.ts'
import { reviewPictures } from '../../work/review/reviewPictures.ts'
import { REVIEW_PAGE } from '../reviewPageText.ts'

/** A review pack that is asked for, and what it is made from. */
export type PackTask = {
  readonly job: Job
  readonly reel: Reel
  readonly cues: readonly Cue[]
  /** Pixels along the longer side of a picture, at most. */
  readonly size: number
  /** Seconds of each cue in motion; 0 for none. */
  readonly clipSeconds: number
  readonly madeFor: string
  readonly isSigned: boolean
  /** Whether full-size stills go beside the page, in a .zip. */
  readonly hasStills: boolean
  readonly source: FrameSource
  readonly kernel: Kernel
}

const sourcesOf = ({ job, reel, clipSeconds, source, kernel }: PackTask): PackSources => ({
  pictures: async (request) => {
    try {
      const planes = await source.read(request.frame)
      return await reviewPictures(planes, kernel, request, jpegAddressNode)
    } catch (error) {
      if (error instanceof MediaError) return undefined
      throw error
    }
  },
  ...(clipSeconds > 0 && {
    clip: (cue: Cue, index: number) => {
      const end = cueEnd(cuesOfReel(job, reel.id), index, reel.frames)
      const request = { job, reel, first: cue.first, end, seconds: clipSeconds }
      return makeClip(request, { source, kernel }, encodeClip)
    },
  }),
})

/** About how large the pack would be, in bytes; undefined where no picture can be read. */
export const reckonPack = async (task: PackTask): Promise<number | undefined> => {
  const { job, reel, cues, size, hasStills } = task
  const some = packSample(cues).map(({ id }) => id)
  const sample = await gatherPack(job, reel, { cues: some, size }, sourcesOf(task))
  const stills = hasStills ? await gatherStills(job, reel, some, sourcesOf(task)) : []
  return packEstimate(cues, sample.cues, stills)
}

/** The bytes of a pack, what the job is to know of it, and the cues that could not be shown. */
export type MadePack = {
  readonly bytes: Uint8Array
  readonly record: PackRecord
  readonly left: readonly Problem[]
}

/** Makes a review pack; refused where none of its cues can be shown. */
export const makePackFile = async (
  task: PackTask,
  onCue: (done: number) => void,
): Promise<Result<MadePack>> => {
  const { job, reel, cues, size, madeFor, isSigned, hasStills } = task
  const wish = { cues: cues.map(({ id }) => id), size }
  const { cues: packed, left } = await gatherPack(job, reel, wish, sourcesOf(task), onCue)
  if (packed.length === 0) {
    const [first, ...rest] = left
    return fail(first ?? problem('missing', 'There is nothing to show.'), ...rest)
  }
  const key = isSigned ? await makeSigningKey() : undefined
  const particulars = { id: newPackId(), madeAt: new Date().toISOString(), madeFor }
  const contents = packContents(job, reel, packed, {
    ...particulars,
    key: key ? { algorithm: key.algorithm, privateKey: key.privateKey } : null,
  })
  const record = {
    ...particulars,
    cues: packed.length,
    key: key ? { algorithm: key.algorithm, publicKey: key.publicKey } : null,
  }
  const bytes = hasStills
    ? packZip(
        contents,
        REVIEW_PAGE,
        fileNameOf(reel),
        await gatherStills(job, reel, wish.cues, sourcesOf(task)),
      )
    : packPage(contents, REVIEW_PAGE)
  return ok({ bytes, record, left })
}
