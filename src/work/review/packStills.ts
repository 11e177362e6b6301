import type { Job, Reel } from '../../core/job/job.ts'
import type { CueId } from '../../core/job/recordIds.ts'
import { gatherPack, type PackSources } from './makePack.ts'

/** A picture that goes beside the page, as a `data:` address. */
export type PackStill = {
  readonly number: number
  readonly kind: 'before' | 'after'
  readonly address: string
}

/** Full-size stills of the chosen cues, before and after; damaged ones are not among them. */
export const gatherStills = async (
  job: Job,
  reel: Reel,
  cues: readonly CueId[],
  { pictures }: PackSources,
  onCue?: (done: number, total: number) => void,
  signal?: AbortSignal,
): Promise<readonly PackStill[]> => {
  const sources: PackSources = {
    pictures: (request) => pictures({ ...request, alternates: [] }),
  }
  const wish = { cues, size: Number.POSITIVE_INFINITY }
  const whole = await gatherPack(job, reel, wish, sources, onCue, signal)
  return whole.cues.flatMap(({ number, before, after }) => [
    { number, kind: 'before', address: before },
    { number, kind: 'after', address: after },
  ])
}
