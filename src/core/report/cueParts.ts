import type { Grade } from '../colour/grade.ts'
import type { BoundaryFound, Cue, Reel } from '../job/job.ts'
import { type Framing, IDENTITY_FRAMING, sameFraming } from '../picture/framing.ts'
import type { Verdict } from '../tolerance/verdict.ts'
import { channelTable } from './baseSection.ts'
import type { Html } from './html.ts'
import {
  areaText,
  countText,
  levelText,
  numberText,
  timecodeOf,
  verdictText,
} from './reportWords.ts'

/** Lift, gamma and gain of R, G and B. */
export const gradeTable = ({ lift, gamma, gain }: Grade, caption: string): Html =>
  channelTable(caption, [
    ['Lift', lift],
    ['Gamma', gamma],
    ['Gain', gain],
  ])

/** A grade on one line. */
export const gradeText = ({ lift, gamma, gain, saturation }: Grade): string => {
  const numbers = (values: readonly number[]) => values.map(numberText).join(' ')
  return `lift ${numbers(lift)}, gamma ${numbers(gamma)}, gain ${numbers(gain)}, saturation ${numberText(saturation)}`
}

const percent = (part: number): string => `${numberText(Number((part * 100).toFixed(4)))} %`

/** All six numbers of a framing, or that it is the whole scan. */
export const framingText = (framing: Framing): string => {
  if (sameFraming(framing, IDENTITY_FRAMING)) return 'the whole scan'
  const { zoom, pan, tilt, rotation, squeeze, blanking } = framing
  return `zoom ${numberText(zoom)}, pan ${percent(pan)}, tilt ${percent(tilt)}, rotation ${numberText(rotation)}°, squeeze ${numberText(squeeze)}, blanking ${percent(blanking)}`
}

export const rampText = ({ ramp, rampShape }: Cue): string =>
  ramp === 0
    ? 'on the frame'
    : `over ${countText(ramp)} ${ramp === 1 ? 'frame' : 'frames'}, ${rampShape}`

const KINDS: Readonly<Record<BoundaryFound['kind'], string>> = {
  start: 'start of the reel',
  cut: 'cut',
  dissolve: 'dissolve',
  'fade-out': 'fade out',
  'fade-in': 'fade in',
  dip: 'dip',
  'by-hand': 'set by hand',
}

/** How the beginning of a cue was found, and how sure that is. */
export const boundaryText = ({ kind, confidence }: BoundaryFound): string =>
  confidence === 1 ? KINDS[kind] : `${KINDS[kind]}, ${Math.round(confidence * 100)} % sure`

/** What was measured of a cue. */
export const measuredText = (verdict: Verdict | undefined, reel: Reel): string => {
  if (!verdict) return verdictText(verdict)
  const { r, g, b, y, composite, areaOutside, frames, framesOutside, worstFrame } = verdict
  const span = (name: string, { low, high }: Verdict['r']): string =>
    `${name}\u00a0${levelText(low)}…${levelText(high)}`
  const spans = [
    ...[span('R', r), span('G', g), span('B', b), span('Y′', y)],
    ...(composite ? [span('luma plus chroma', composite)] : []),
  ]
  return [
    `${verdictText(verdict)}; ${countText(framesOutside)} of ${countText(frames)} frames outside`,
    areaOutside === 0
      ? 'nothing out on any'
      : `worst ${timecodeOf(reel, worstFrame)} with ${areaText(areaOutside)} of its area out`,
    `levels ${spans.join(', ')}\u00a0%`,
  ].join('; ')
}
