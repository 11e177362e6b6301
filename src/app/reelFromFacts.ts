import { PRINT_BASE } from '../core/film/filmBase.ts'
import { NO_PARTICULARS } from '../core/film/particulars.ts'
import type { Reel } from '../core/job/job.ts'
import { newReelId } from '../core/job/recordIds.ts'
import { framesPerSecond, nominalFramesPerSecond, type Rate } from '../core/time/rate.ts'
import { canDropFrames, formatTimecode, parseTimecode } from '../core/time/timecode.ts'
import { INITIAL_TRANSFER } from '../core/transfer/transferSettings.ts'
import type { MediaFacts } from '../media/mediaFacts.ts'
import { sequenceParts } from '../media/numberedFiles.ts'
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

/** How a reel is counted: from where, and whether frames are dropped. */
type Counting = Pick<Reel, 'startCount' | 'isDropFrame'>

/**
 * Counting by the timecode a file states, in drop-frame counting where the rate has one and the
 * label is none of those it leaves out. What the rate cannot have is not taken over.
 */
const countingOf = (stated: string | undefined, rate: Rate): Counting => {
  const usual = canDropFrames(rate)
  for (const isDropFrame of new Set([usual, false])) {
    const count = stated === undefined ? undefined : parseTimecode(stated, rate, isDropFrame)
    if (count?.ok) return { startCount: count.value, isDropFrame }
  }
  return { startCount: startCount(rate, usual), isDropFrame: usual }
}

/** A file's name for people; a file that is all extension keeps it. */
const withoutExtension = (name: string): string => name.replace(/(?<=.)\.[^.]+$/u, '')

/** A reel's name from that of its scan; of a sequence, what comes before the numbers. */
const reelName = (name: string): string => {
  const before = sequenceParts(name)?.before.replace(/[\s._-]+$/u, '')
  return before || withoutExtension(name)
}

/** A reel of the job, from what the file states and what the person answered. */
export const reelFromFacts = (facts: MediaFacts, answer: CodingAnswer): Reel => {
  const { scanHint, startTimecode } = facts
  return {
    id: newReelId(),
    name: reelName(facts.name),
    gauge: '16mm',
    rate: answer.rate,
    frames: facts.frames,
    ...countingOf(startTimecode, answer.rate),
    base: scanHint ? { ...PRINT_BASE, scan: scanHint } : PRINT_BASE,
    particulars: NO_PARTICULARS,
    guide: null,
    foreign: [],
    lineUps: [],
    transfer: INITIAL_TRANSFER,
    overrides: [],
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
      checksum: null,
    },
  }
}

/** What the person is told where a file's timecode could not be taken over; undefined where it was. */
export const timecodeNotTaken = (
  { name, startTimecode }: MediaFacts,
  { startCount, rate, isDropFrame }: Reel,
): string | undefined => {
  const start = formatTimecode(startCount, rate, isDropFrame)
  return startTimecode === undefined || start.replace(';', ':') === startTimecode
    ? undefined
    : `${name} begins at ${startTimecode}, which is no timecode at ${Number(framesPerSecond(rate).toFixed(3))} frames a second; the reel is counted from ${start}.`
}
