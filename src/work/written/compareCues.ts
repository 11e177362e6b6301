import { valuesAt } from '../../core/job/valuesAt.ts'
import type { Planes } from '../../core/picture/planes.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { formOf } from '../../core/transfer/formOf.ts'
import { passLimiter } from '../../core/transfer/passLimiter.ts'
import type { PassFinding } from '../../core/transfer/passRecord.ts'
import { planesDifference, planesOfDelivered } from '../../core/transfer/planesOfDelivered.ts'
import { isSequence } from '../../core/transfer/transferSettings.ts'
import type { WrittenPass } from '../checkWritten.ts'
import type { CueFrame } from './cueFrames.ts'

/**
 * The least PSNR, in dB, at which a frame of a video is taken for the picture it should be: the
 * grainiest clip tried here is 39 dB from its source, pictures a frame apart at a cut below 20.
 */
const FLOOR = 32

/** Cues that are told by name, at most. */
const MOST_TOLD = 5

type Unlike = { readonly index: number; readonly says: string }

/** The values on the frame of a cue if it were graded as another of the reel. */
const asGradedBy = ({ plan }: WrittenPass, { frame, index }: CueFrame, other: number) => {
  const cue = plan.cues[other]
  if (!cue) return undefined
  return other === index ? valuesAt(cue, plan.cues[index - 1], frame) : cue
}

/** What a frame of the reel should be in the file, with the values of a cue. */
const expected = (
  pass: WrittenPass,
  scanned: Planes,
  place: CueFrame,
  other: number,
): Planes | undefined => {
  const { plan, kernel, burnIn } = pass
  const values = asGradedBy(pass, place, other)
  if (!values) return undefined
  const form = formOf(plan)
  const overlay = burnIn(place.frame)
  const limiter = passLimiter(plan)
  const { bytes } = kernel.deliver(
    { planes: scanned, coding: plan.coding, grade: values.grade, framing: values.framing },
    {
      form,
      ...(limiter && { limiter }),
      ...(overlay && { overlay }),
    },
  )
  return planesOfDelivered(bytes, form, scanned)
}

/**
 * Compares the frames that cues begin with, by value: those of a sequence code by code, those of a
 * video within the codec's loss, and nearer to their own cue's values than to its neighbours'.
 */
export const createCueComparison = (pass: WrittenPass) => {
  const { plan, scan, heldFrames } = pass
  const { reel, cues, settings } = plan
  const isExact = isSequence(settings.format)
  const unlike: Unlike[] = []
  const held = new Set(heldFrames)
  let compared = 0
  let least = Infinity
  const placeText = ({ frame, index }: CueFrame): string =>
    `cue ${index + 1} at frame ${frame}, ${formatTimecode(reel.startCount + frame, reel.rate, reel.isDropFrame)}`

  const add = async (place: CueFrame, written: Planes): Promise<void> => {
    if (held.has(place.frame)) return
    const scanned = await scan.read(place.frame)
    const own = expected(pass, scanned, place, place.index)
    if (!own) return
    compared++
    const { most, psnr } = planesDifference(written, own)
    if (isExact) {
      if (most > 0)
        unlike.push({ index: place.index, says: `${placeText(place)}, by up to ${most} codes` })
      return
    }
    least = Math.min(least, psnr)
    if (psnr < FLOOR) {
      unlike.push({ index: place.index, says: `${placeText(place)}, ${psnr.toFixed(1)} dB` })
      return
    }
    for (const other of [place.index - 1, place.index + 1]) {
      const theirs = expected(pass, scanned, place, other)
      if (theirs && planesDifference(written, theirs).psnr > psnr) {
        const says = `${placeText(place)}, which is nearer to the values of cue ${other + 1}`
        unlike.push({ index: place.index, says })
        return
      }
    }
  }

  const finding = (): PassFinding => {
    if (unlike.length > 0) {
      const told = unlike.slice(0, MOST_TOLD).map(({ says }) => says)
      const more = unlike.length > MOST_TOLD ? `; and ${unlike.length - MOST_TOLD} more` : ''
      return {
        check: 'cues',
        standing: 'wrong',
        says: `Not as decided: ${told.join('; ')}${more}.`,
      }
    }
    const how = isExact
      ? 'code by code'
      : `within the codec's loss (PSNR ${least.toFixed(1)} dB at least, ${FLOOR} are asked)`
    return {
      check: 'cues',
      standing: 'right',
      says: `${cues.length === 1 ? 'The cue begins' : `All ${cues.length} cues begin`} on the frame with its own values: ${compared} frames compared with the scan graded anew, ${how}.`,
    }
  }
  return { add, finding }
}
