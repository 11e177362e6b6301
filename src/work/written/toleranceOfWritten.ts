import { cueIndexAt } from '../../core/job/cueList.ts'
import type { Frame } from '../../core/time/frame.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import type { PictureLevels } from '../../core/tolerance/pictureLevels.ts'
import { createVerdictGatherer, type Verdict } from '../../core/tolerance/verdict.ts'
import type { PassFinding } from '../../core/transfer/passRecord.ts'
import { isSequence } from '../../core/transfer/transferSettings.ts'
import type { WrittenPass } from '../checkWritten.ts'

const percent = (part: number): string => (100 * part).toFixed(2)

const spans = ({ r, g, b, y }: Verdict): string =>
  [['R′', r] as const, ['G′', g] as const, ['B′', b] as const, ['Y′', y] as const]
    .map(([name, { low, high }]) => `${name} ${(100 * low).toFixed(1)}…${(100 * high).toFixed(1)}`)
    .join(', ')

/** Gathers the levels of every written frame of the reel, as it was decoded, against the tolerance. */
export const createWrittenTolerance = ({ plan }: Pick<WrittenPass, 'plan'>) => {
  const { profile, cues } = plan
  const all = createVerdictGatherer(profile)
  const outside = new Set<number>()
  const add = (at: Frame, levels: PictureLevels): void => {
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
