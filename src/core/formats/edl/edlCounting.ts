import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { framesPerSecond, nominalFramesPerSecond, type Rate, rate } from '../../time/rate.ts'
import { canDropFrames } from '../../time/timecode.ts'
import { shortDecimal } from '../decimal.ts'
import type { ListTiming } from '../decisionList.ts'
import type { EdlEvent } from './edlEvent.ts'
import { type EdlLabel, hasDropMark } from './edlLabel.ts'
import type { EdlSurvey } from './edlSurvey.ts'

/** How the labels of a list are counted. */
export type EdlCounting = {
  readonly rate: Rate
  /** Whether the list says that frames are dropped; undefined where it does not say. */
  readonly isDropFrame: boolean | undefined
  readonly drops: (label: EdlLabel, event: EdlEvent) => boolean
}

const PLAIN_RATES = [rate(24), rate(25), rate(30), rate(50), rate(60)]
const DROP_RATES = [rate(30_000, 1001), rate(60_000, 1001)]

export const rateWords = (r: Rate): string => shortDecimal(framesPerSecond(r), 3)

const wordsOfRates = (rates: readonly Rate[]): string => {
  const words = rates.map(rateWords)
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`
}

const fits = ({ highest, marked, dropMode }: EdlSurvey, r: Rate): boolean =>
  nominalFramesPerSecond(r) > highest && (!(marked || dropMode) || canDropFrames(r))

/** The usual rates all labels fit, the lowest first. */
export const ratesFor = (seen: EdlSurvey): readonly Rate[] =>
  [...PLAIN_RATES, ...DROP_RATES].filter(
    (each) => fits(seen, each) && canDropFrames(each) === Boolean(seen.marked || seen.dropMode),
  )

/** The usual rates all labels fit, as the end of a sentence. */
export const fittingRates = (seen: EdlSurvey): string => {
  const fitting = ratesFor(seen)
  return fitting.length === 0
    ? 'no usual rate fits the list'
    : `${wordsOfRates(fitting)} frames a second would fit the list`
}

const refuse = (says: string, event: EdlEvent | undefined): Result<never> => {
  const place = { line: event?.line ?? 1 }
  return fail(problem('out-of-range', says, place))
}

/**
 * How to count the labels of a list: by `timing`, or at the lowest usual rate that all of them
 * fit (24, 25, 30, 50, 60; of drop-frame labels 30000/1001, 60000/1001), or the one the list
 * states itself. Drop-frame punctuation holds for its label; a label with colons goes by the FCM
 * line before it, and without one by `timing`, unless other labels of the list have the
 * punctuation. Refused where labels drop frames at a rate that cannot.
 */
export const chooseCounting = (
  seen: EdlSurvey,
  timing: ListTiming | undefined,
): Result<EdlCounting> => {
  const { statedRate } = seen
  const dropping = seen.dropMode ?? seen.marked
  const chosen =
    timing?.rate ?? (statedRate && fits(seen, statedRate) ? statedRate : ratesFor(seen)[0])
  if (!chosen)
    return refuse(
      `Frames of labels here go up to ${seen.highest}, and ${fittingRates(seen)}.`,
      seen.highestIn,
    )
  if (dropping && !canDropFrames(chosen))
    return refuse(
      `Times from here on are drop-frame, which no count of ${rateWords(chosen)} frames a second is; ${fittingRates(seen)}.`,
      dropping,
    )
  const dropsUnsaid = timing?.isDropFrame === true && !seen.marked && canDropFrames(chosen)
  return ok({
    rate: chosen,
    isDropFrame: !canDropFrames(chosen)
      ? undefined
      : dropping
        ? true
        : seen.nonDropMode
          ? false
          : undefined,
    drops: (label, { mode }) =>
      hasDropMark(label) || mode === 'drop' || (mode === undefined && dropsUnsaid),
  })
}
