import { IDENTITY_GRADE } from '../../core/colour/grade.ts'
import { cueIndexAt } from '../../core/job/cueList.ts'
import { IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import type { Coding, Planes } from '../../core/picture/planes.ts'
import type { Frame } from '../../core/time/frame.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { createVerdictGatherer, type Verdict } from '../../core/tolerance/verdict.ts'
import type { PassFinding } from '../../core/transfer/passRecord.ts'
import { isSequence } from '../../core/transfer/transferSettings.ts'
import type { WrittenPass } from '../checkWritten.ts'
import type { FrameWatcher } from './frameWatcher.ts'

/** How the codes of what a plan writes are read. */
export const writtenCoding = ({ plan }: Pick<WrittenPass, 'plan'>): Coding => ({
  matrix: plan.coding.matrix,
  range: isSequence(plan.settings.format) ? 'full' : 'narrow',
})

const percent = (part: number): string => (100 * part).toFixed(2)

const spans = ({ r, g, b, y }: Verdict): string =>
  [['R′', r] as const, ['G′', g] as const, ['B′', b] as const, ['Y′', y] as const]
    .map(([name, { low, high }]) => `${name} ${(100 * low).toFixed(1)}…${(100 * high).toFixed(1)}`)
    .join(', ')

/** Measures every written frame of the reel against the job's tolerance, as it was decoded. */
export const createWrittenTolerance = (pass: WrittenPass): FrameWatcher => {
  const { plan, kernel } = pass
  const { profile, cues } = plan
  const coding = writtenCoding(pass)
  const all = createVerdictGatherer(profile)
  const outside = new Set<number>()
  const add = (at: Frame, planes: Planes): void => {
    const input = { planes, coding, grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING }
    const levels = kernel.measureLevels(input, coding.matrix, profile)
    all.add(at, levels)
    if (levels.outside / levels.pixels > profile.area) outside.add(cueIndexAt(cues, at))
  }
  const finding = (): PassFinding | undefined => {
    const verdict = all.verdict()
    if (!verdict) return undefined
    const filter = profile.filtered ? 'after the filter' : 'unfiltered'
    const codec = isSequence(plan.settings.format) ? '' : ', with what the codec added'
    const levels = `${spans(verdict)} %, ${filter}${codec}`
    const { frames, startCount, rate, isDropFrame } = plan.reel
    if (verdict.isInside && verdict.frames < frames)
      return {
        check: 'tolerance',
        standing: 'not known',
        says: `Only ${verdict.frames} of the reel’s ${frames} frames could be measured; these are inside ${profile.name}.`,
      }
    if (verdict.isInside)
      return {
        check: 'tolerance',
        standing: 'right',
        says: `Every frame of the file is inside ${profile.name}: at most ${percent(verdict.areaOutside)} % of a picture outside; ${levels}.`,
      }
    const numbers = [...outside].map((index) => index + 1)
    const told = numbers.slice(0, 12).join(', ') + (numbers.length > 12 ? '…' : '')
    return {
      check: 'tolerance',
      standing: 'wrong',
      says: `${verdict.framesOutside} of ${verdict.frames} frames of the file are outside ${profile.name}, in ${numbers.length === 1 ? 'cue' : 'cues'} ${told}: at worst ${percent(verdict.areaOutside)} % of frame ${verdict.worstFrame}, ${formatTimecode(startCount + verdict.worstFrame, rate, isDropFrame)}; ${levels}.`,
    }
  }
  return { add, finding }
}
