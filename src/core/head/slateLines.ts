import { formatSeconds } from '../time/duration.ts'
import { GAUGE_WORDS } from '../time/gaugeWords.ts'
import { framesPerSecond } from '../time/rate.ts'
import { formatTimecode } from '../time/timecode.ts'
import type { PassPlan } from '../transfer/passPlan.ts'
import { TRANSFER_FORMAT_FACTS } from '../transfer/transferSettings.ts'

const SCANS = {
  print: 'print',
  'printing-density': 'printing density',
  negative: 'negative',
} as const

const LIMITING = {
  none: 'not limited',
  soft: 'limited softly to it',
  hard: 'limited hard to it',
} as const

const MATRICES = { bt601: 'BT.601', bt709: 'BT.709', bt2020: 'BT.2020' } as const

/** What a slate tells of a transfer, the most needed first: what it is, and its value. */
export const slateLines = ({
  title,
  reel,
  cues,
  profile,
  settings,
  timeline,
  coding,
}: PassPlan): readonly (readonly [what: string, value: string])[] => {
  const { media, rate, startCount, isDropFrame, base } = reel
  const timecode = (count: number): string => formatTimecode(count, rate, isDropFrame)
  const fps = framesPerSecond(rate)
  const aspect = coding.pixelAspect ?? 1
  const pixels = Math.abs(aspect - 1) < 0.001 ? 'square' : aspect.toFixed(3)
  return [
    ['Title', title],
    ['Reel', `${reel.name}, ${GAUGE_WORDS[reel.gauge]}`],
    ['Length', `${reel.frames} frames, ${formatSeconds(reel.frames, rate)}`],
    ['Rate', `${Number.isInteger(fps) ? fps : fps.toFixed(3)} frames/s`],
    ['Reel from', timecode(startCount)],
    ['File from', timecode(startCount - timeline.headFrames)],
    ['Cues', String(cues.length)],
    ['Tolerance', `${profile.name}, ${LIMITING[settings.limiting]}`],
    ['Picture', `${media.width}×${media.height}, ${MATRICES[coding.matrix]}, pixels ${pixels}`],
    ['Scan', media.name],
    ['Base', `${SCANS[base.scan]}${base.list ? `, ${base.list.name || 'process list'}` : ''}`],
    ['Burnt in', settings.burnsTimecode ? 'timecode of the reel' : 'nothing'],
    ['Format', TRANSFER_FORMAT_FACTS[settings.format].title],
  ]
}
