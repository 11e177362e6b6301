import type { Planes } from '../../core/picture/planes.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { isNearerTo } from '../../core/transfer/nearerTo.ts'
import type { PassFinding } from '../../core/transfer/passRecord.ts'
import { planesDifference } from '../../core/transfer/planesOfDelivered.ts'
import { isSequence } from '../../core/transfer/transferSettings.ts'
import { MediaError } from '../../media/mediaError.ts'
import type { WrittenPass } from '../checkWritten.ts'
import { type CueFrame, cueFrames } from './cueFrames.ts'
import { expectedFrame } from './expectedFrame.ts'
import type { FrameWatcher } from './frameWatcher.ts'
import { createScanWindow } from './scanWindow.ts'

/**
 * The least PSNR, in dB, at which a frame of a video is taken for the picture it should be.
 * Measured at the qualities of `encoderArguments`: clips keep 44 dB at least, moving noise of any
 * strength 38.8 (H.264), 38.2 (VP9) and 34.9 (AV1).
 */
export const LEAST_PSNR = 32

/** Frames that are told by name, at most. */
const MOST_TOLD = 5

/** Nothing about a frame of a sequence; of a video, the frames it could be taken for. */
const ALONE = { before: 0, after: 0 }
const WITH_NEIGHBOURS = { before: 1, after: 2 }

/**
 * Compares the frames that cues begin and end with by value: those of a sequence code by code,
 * those of a video within the codec's loss. One that shows the values of the cue before or after,
 * or the frame before or after, is told as that, where these can be told apart.
 */
export const createCueComparison = (pass: WrittenPass): FrameWatcher => {
  const { plan, scan } = pass
  const { reel, cues, settings } = plan
  const isExact = isSequence(settings.format)
  const places = cueFrames(cues, reel.frames)
  const scanned = createScanWindow(scan, settings.onDamage, isExact ? ALONE : WITH_NEIGHBOURS)
  const unlike: string[] = []
  let compared = 0
  let least = Infinity
  let lost: string | undefined

  const placeText = ({ frame: at, index }: CueFrame): string =>
    `cue ${index + 1} at frame ${at}, ${formatTimecode(reel.startCount + at, reel.rate, reel.isDropFrame)}`

  /** What a frame shows instead of its own picture, in words; undefined where it is its own. */
  const mistakenFor = async (place: CueFrame, decoded: Planes, own: Planes) => {
    for (const other of [place.index - 1, place.index + 1]) {
      if (!cues[other]) continue
      const graded = expectedFrame(pass, place.frame, await scanned(place.frame), other)
      if (isNearerTo(decoded, own, graded)) return `which has the values of cue ${other + 1}`
    }
    for (const step of [-1, 1]) {
      const at = place.frame + step
      if (at < 0 || at >= reel.frames) continue
      const picture = expectedFrame(pass, frame(at), await scanned(frame(at)))
      if (isNearerTo(decoded, own, picture)) return `which shows frame ${at}`
    }
    return undefined
  }

  const compare = async (place: CueFrame, decoded: Planes): Promise<void> => {
    const own = expectedFrame(pass, place.frame, await scanned(place.frame))
    const { most, psnr } = planesDifference(decoded, own)
    compared++
    least = Math.min(least, psnr)
    if (isExact && most === 0) return
    const instead = await mistakenFor(place, decoded, own)
    if (instead !== undefined) unlike.push(`${placeText(place)}, ${instead}`)
    else if (isExact) unlike.push(`${placeText(place)}, by up to ${most} codes`)
    else if (psnr < LEAST_PSNR) unlike.push(`${placeText(place)}, ${psnr.toFixed(1)} dB`)
  }

  const add = async (at: Frame, decoded: Planes): Promise<void> => {
    const place = places.get(at)
    if (!place || lost !== undefined) return
    try {
      await compare(place, decoded)
    } catch (error) {
      if (!(error instanceof MediaError)) throw error
      lost = error.problem.says
    }
  }

  const finding = (): PassFinding => {
    if (unlike.length > 0) {
      const told = unlike.slice(0, MOST_TOLD).join('; ')
      const more = unlike.length > MOST_TOLD ? `; and ${unlike.length - MOST_TOLD} more` : ''
      const says = `Not as decided, of ${compared} frames compared: ${told}${more}.`
      return { check: 'cues', standing: 'wrong', says }
    }
    if (lost !== undefined)
      return {
        check: 'cues',
        standing: 'not known',
        says: `The scan could not be read to compare with: ${lost}`,
      }
    if (compared < places.size)
      return {
        check: 'cues',
        standing: 'not known',
        says: `Only ${compared} of the ${places.size} frames that cues begin and end with could be read back.`,
      }
    const how = isExact
      ? 'code by code'
      : least === Infinity
        ? 'without any loss'
        : `within the codec’s loss: PSNR ${least.toFixed(1)} dB at least, where ${LEAST_PSNR} are asked`
    return {
      check: 'cues',
      standing: 'right',
      says: `${cues.length === 1 ? 'The cue has its values' : `All ${cues.length} cues have their own values`} from the first frame to the last: ${compared} frames compared with the scan graded anew, ${how}.`,
    }
  }
  return { add, findings: () => [finding()] }
}
