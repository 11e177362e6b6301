import { PRINT_BASE } from '../core/film/filmBase.ts'
import type { Reel } from '../core/job/job.ts'
import { newReelId } from '../core/job/recordIds.ts'
import { nominalFramesPerSecond, type Rate } from '../core/time/rate.ts'
import { canDropFrames } from '../core/time/timecode.ts'
import type { MediaFacts } from '../media/mediaFacts.ts'
import type { CodingAnswer } from '../store/state.ts'

/** A reel usually starts at ten hours (common practice, no published source). */
const START_HOUR = 10

const DROP_MINUTES = 600

/** Timecode count of 10:00:00:00, in drop-frame counting where it is used. */
const startCount = (rate: Rate, isDropFrame: boolean): number => {
  const nominal = nominalFramesPerSecond(rate)
  const dropped = isDropFrame ? (nominal / 15) * (DROP_MINUTES - DROP_MINUTES / 10) : 0
  return START_HOUR * 3600 * nominal - dropped
}

/** A file's name for people; a file that is all extension keeps it. */
const withoutExtension = (name: string): string => name.replace(/(?<=.)\.[^.]+$/u, '')

/** A reel of the job, from what the file states and what the person answered. */
export const reelFromFacts = (facts: MediaFacts, answer: CodingAnswer): Reel => {
  const isDropFrame = canDropFrames(answer.rate)
  return {
    id: newReelId(),
    name: withoutExtension(facts.name),
    gauge: '16mm',
    rate: answer.rate,
    frames: facts.frames,
    startCount: startCount(answer.rate, isDropFrame),
    isDropFrame,
    base: PRINT_BASE,
    foreign: [],
    media: {
      name: facts.name,
      container: facts.container,
      codec: facts.codec,
      width: facts.width,
      height: facts.height,
      displayAspect: facts.displayAspect,
      depth: facts.depth,
      layout: facts.layout,
      matrix: answer.matrix,
      matrixBy: facts.matrix === undefined ? 'person' : 'file',
      range: answer.range,
      rangeBy: facts.range === undefined ? 'person' : 'file',
      rateBy: facts.rate === undefined ? 'person' : 'file',
      bytes: facts.bytes,
    },
  }
}
