import { nominalFramesPerSecond } from '../../time/rate.ts'
import { framesPerDay, isLabelLeftOut, labelToCount } from '../../time/timecode.ts'
import type { Span } from '../decisionList.ts'
import { type EdlCounting, rateWords } from './edlCounting.ts'
import type { EdlEvent } from './edlEvent.ts'
import { type EdlLabel, labelFrames, labelSeconds, labelText } from './edlLabel.ts'

/** The count of a label, or a sentence that says why it has none at this rate. */
const countOf = (
  label: EdlLabel,
  event: EdlEvent,
  counting: EdlCounting,
  fitting: string,
): number | string => {
  const { rate } = counting
  const drops = counting.drops(label, event)
  const [seconds, frames] = [labelSeconds(label), labelFrames(label)]
  const nominal = nominalFramesPerSecond(rate)
  if (frames >= nominal)
    return `${labelText(label)} is past the ${nominal} frames of a second at ${rateWords(rate)}; ${fitting}.`
  if (isLabelLeftOut(seconds, frames, rate, drops))
    return `${labelText(label)} is left out by drop-frame counting; state FCM: NON-DROP FRAME if the list drops none.`
  return labelToCount(seconds, frames, rate, drops)
}

/**
 * The frames from one label to another. An end before the beginning is past midnight if that
 * makes less than half a day, and else refused, in a sentence.
 */
export const spanOf = (
  labelIn: EdlLabel,
  labelOut: EdlLabel,
  event: EdlEvent,
  counting: EdlCounting,
  fitting: string,
): Span | string => {
  const from = countOf(labelIn, event, counting, fitting)
  if (typeof from === 'string') return from
  const to = countOf(labelOut, event, counting, fitting)
  if (typeof to === 'string') return to
  if (to >= from) return { from, to }
  const day = framesPerDay(counting.rate, counting.drops(labelOut, event))
  if (to + day - from < day / 2) return { from, to: to + day }
  return `The out ${labelText(labelOut)} is before the in ${labelText(labelIn)}; correct one of them.`
}
