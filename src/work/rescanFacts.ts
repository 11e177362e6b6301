import type { NewReelFacts } from '../core/conform/applyReconform.ts'
import type { Reel } from '../core/job/job.ts'
import { sameRate } from '../core/time/rate.ts'
import { canDropFrames, formatTimecode, parseTimecode } from '../core/time/timecode.ts'
import type { MediaFacts } from '../media/mediaFacts.ts'

/** Where the reel begins at another rate: by the same label where that rate has it. */
const countingAt = (reel: Reel, rate: Reel['rate']): Pick<Reel, 'startCount' | 'isDropFrame'> => {
  if (sameRate(rate, reel.rate)) return reel
  const isDropFrame = canDropFrames(rate)
  const label = formatTimecode(reel.startCount, reel.rate, reel.isDropFrame)
  const start = parseTimecode(isDropFrame ? label : label.replace(';', ':'), rate, isDropFrame)
  return { startCount: start.ok ? start.value : reel.startCount, isDropFrame }
}

/**
 * A reel's particulars on another scan of it: what the file states, and where it leaves something
 * open what held for the scan before.
 */
export const rescanFacts = (reel: Reel, facts: MediaFacts): NewReelFacts => {
  const { name, container, codec, width, height, displayAspect, depth, layout, bytes } = facts
  const { media } = reel
  const rate = facts.rate ?? reel.rate
  const { startCount, isDropFrame } = countingAt(reel, rate)
  return {
    frames: facts.frames,
    rate,
    startCount,
    isDropFrame,
    media: {
      ...{ name, container, codec, width, height, displayAspect, depth, layout, bytes },
      matrix: facts.matrix ?? media.matrix,
      matrixBy: facts.matrix === undefined ? media.matrixBy : 'file',
      range: facts.range ?? media.range,
      rangeBy: facts.range === undefined ? media.rangeBy : 'file',
      rateBy: facts.rate === undefined ? media.rateBy : 'file',
      checksum: null,
    },
  }
}
