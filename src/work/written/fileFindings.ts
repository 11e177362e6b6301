import { formatSeconds } from '../../core/time/duration.ts'
import { framesPerSecond } from '../../core/time/rate.ts'
import { formOf } from '../../core/transfer/formOf.ts'
import { VIDEO_MARGIN } from '../../core/transfer/passLimiter.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import type { PassFinding } from '../../core/transfer/passRecord.ts'
import { isSequence, TRANSFER_FORMAT_FACTS } from '../../core/transfer/transferSettings.ts'
import { sameCurve, videoTags } from '../../core/transfer/videoTags.ts'
import type { WrittenPass } from '../checkWritten.ts'

const depthOf = (plan: PassPlan): number => {
  const form = formOf(plan)
  if (form.kind === 'planes') return form.depth
  return form.kind === 'words10' ? 10 : 16
}

/** What the written file states of its pictures, against what it should. */
export const tagsFinding = ({ plan, written }: WrittenPass): PassFinding => {
  const { facts } = written
  const { media } = plan.reel
  const { title } = TRANSFER_FORMAT_FACTS[plan.settings.format]
  const wrong = [
    ...(facts.width === media.width && facts.height === media.height
      ? []
      : [`size ${facts.width}×${facts.height} instead of ${media.width}×${media.height}`]),
  ]
  const isAspectStated = plan.settings.format !== 'png' && plan.settings.format !== 'tiff'
  if (isAspectStated && Math.abs(facts.displayAspect / media.displayAspect - 1) > 0.002)
    wrong.push(
      `aspect ${facts.displayAspect.toFixed(3)} instead of ${media.displayAspect.toFixed(3)}`,
    )
  const depth = depthOf(plan)
  if (facts.depth !== depth) wrong.push(`${facts.depth} bits instead of ${depth}`)
  if (isSequence(plan.settings.format))
    return wrong.length > 0
      ? { check: 'tags', standing: 'wrong', says: `${title} states ${wrong.join(', ')}.` }
      : {
          check: 'tags',
          standing: 'right',
          says: `${title}: ${facts.width}×${facts.height}, ${facts.depth} bits, full-range R′G′B′.`,
        }
  const tags = videoTags(plan)
  const stated = (is: string | undefined, should: string, what: string) =>
    is === should ? [] : [`${what} ${is ?? 'not stated'} instead of ${should}`]
  wrong.push(
    ...stated(facts.matrix, plan.coding.matrix, 'matrix'),
    ...stated(facts.range, 'narrow', 'range'),
    ...stated(facts.primaries, tags.primaries, 'primaries'),
  )
  if (!sameCurve(facts.transfer, tags.transfer))
    wrong.push(...stated(facts.transfer, tags.transfer, 'transfer'))
  return wrong.length > 0
    ? { check: 'tags', standing: 'wrong', says: `${title} states ${wrong.join(', ')}.` }
    : {
        check: 'tags',
        standing: 'right',
        says: `${title} states ${facts.width}×${facts.height}, matrix ${facts.matrix}, primaries ${facts.primaries}, transfer ${facts.transfer}, narrow range.`,
      }
}

/** Running time and rate of the written file, against the plan's. */
export const durationFinding = ({ plan, written }: WrittenPass, counted: number): PassFinding => {
  const { rate } = plan.reel
  const says = `${counted} ${counted === 1 ? 'frame' : 'frames'} at ${Number(framesPerSecond(rate).toFixed(3))} frames/s: ${formatSeconds(counted, rate)}`
  const { frames } = plan.timeline
  if (counted !== frames)
    return {
      check: 'duration',
      standing: 'wrong',
      says: `${says}; planned were ${frames} frames, ${formatSeconds(frames, rate)}.`,
    }
  const stated = written.facts.rate
  if (stated === undefined && counted === 1)
    return {
      check: 'duration',
      standing: 'told',
      says: `${says}. One frame has no rate of its own.`,
    }
  if (stated === undefined)
    return isSequence(plan.settings.format)
      ? { check: 'duration', standing: 'told', says: `${says}. These pictures state no rate.` }
      : { check: 'duration', standing: 'wrong', says: `${says}, but the file states no even rate.` }
  return stated.num * rate.den === stated.den * rate.num
    ? { check: 'duration', standing: 'right', says: `${says}, as the file states.` }
    : {
        check: 'duration',
        standing: 'wrong',
        says: `${says}, but the file states ${Number(framesPerSecond(stated).toFixed(3))}.`,
      }
}

const LIMITING = {
  none: 'Nothing was limited',
  soft: 'Limited softly',
  hard: 'Limited hard',
} as const

/** What was done to levels on the way. */
export const limitingFinding = ({ plan, tally }: WrittenPass): PassFinding => {
  const { limiting } = plan.settings
  const { limitedPixels, limitedFrames, clippedPixels } = tally
  const changed =
    limiting === 'none'
      ? ''
      : ` to ${plan.profile.name}${isSequence(plan.settings.format) ? '' : `, ${100 * VIDEO_MARGIN} % inside its limits`}: ${limitedPixels} pixels changed, in ${limitedFrames} frames`
  const clipped =
    clippedPixels === 0
      ? 'nothing lay past what the file’s codes hold'
      : `${clippedPixels} pixels lay past what the file’s codes hold, and were clipped there`
  return {
    check: 'limiting',
    standing: 'told',
    says: `${LIMITING[limiting]}${changed}; ${clipped}.`,
  }
}

/** Whether the bytes that were written are still those that the record has the checksum of. */
export const checksumFinding = async ({
  output,
  checksumAgain,
}: WrittenPass): Promise<PassFinding> => {
  if (!checksumAgain)
    return { check: 'checksum', standing: 'told', says: `SHA-256 ${output.sha256}, as written.` }
  const again = await checksumAgain()
  return again === output.sha256
    ? { check: 'checksum', standing: 'right', says: `SHA-256 ${again}, of the bytes read back.` }
    : {
        check: 'checksum',
        standing: 'wrong',
        says: `The bytes read back have SHA-256 ${again}, not ${output.sha256}, which was written.`,
      }
}
