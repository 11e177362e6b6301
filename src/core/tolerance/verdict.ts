import type { Frame } from '../time/frame.ts'
import { type LevelLimits, levelLimits } from './levelLimits.ts'
import type { Extremes, PictureLevels } from './pictureLevels.ts'
import type { Limits, ToleranceProfile } from './profile.ts'

/** A run of frames measured against a profile. */
export type Verdict = {
  readonly profile: string
  readonly isInside: boolean
  readonly r: Extremes
  readonly g: Extremes
  readonly b: Extremes
  readonly y: Extremes
  /** Peaks of the composite signal, where the profile limits them. */
  readonly composite?: Extremes
  /** The frame with the largest part outside; of those alike, the one with the widest excursion. */
  readonly worstFrame: Frame
  /** Parts of the worst frame's area that are outside, below and above, 0…1. */
  readonly areaOutside: number
  readonly areaBelow: number
  readonly areaAbove: number
  readonly frames: number
  readonly framesOutside: number
}

const wider = (a: Extremes, b: Extremes): Extremes => ({
  low: Math.min(a.low, b.low),
  high: Math.max(a.high, b.high),
})

/** How far the worst channel goes past its limits; negative while all are inside. */
const excursion = (levels: PictureLevels, limits: LevelLimits): number => {
  const past = (e: Extremes, [low, high]: Limits) => Math.max(low - e.low, e.high - high)
  return Math.max(
    past(levels.r, limits.rgb),
    past(levels.g, limits.rgb),
    past(levels.b, limits.rgb),
    past(levels.y, limits.luma),
    levels.composite ? past(levels.composite, limits.composite) : -Infinity,
  )
}

/**
 * Gathers the levels of one frame after another, in any order, into a verdict. `verdict` is
 * undefined until a frame was added. The area rule holds for each frame by itself.
 */
export const createVerdictGatherer = (profile: ToleranceProfile) => {
  const limits = levelLimits(profile)
  let verdict: Verdict | undefined
  let worst = { area: -1, excursion: -Infinity }
  const add = (frame: Frame, levels: PictureLevels): void => {
    const area = levels.outside / levels.pixels
    const past = excursion(levels, limits)
    const isOutside = area > profile.area
    const isWorst = area > worst.area || (area === worst.area && past > worst.excursion)
    if (isWorst) worst = { area, excursion: past }
    const before = verdict
    const composite =
      before?.composite && levels.composite
        ? wider(before.composite, levels.composite)
        : levels.composite
    verdict = {
      profile: profile.id,
      isInside: (before?.isInside ?? true) && !isOutside,
      r: before ? wider(before.r, levels.r) : levels.r,
      g: before ? wider(before.g, levels.g) : levels.g,
      b: before ? wider(before.b, levels.b) : levels.b,
      y: before ? wider(before.y, levels.y) : levels.y,
      ...(composite && { composite }),
      worstFrame: isWorst || !before ? frame : before.worstFrame,
      areaOutside: isWorst || !before ? area : before.areaOutside,
      areaBelow: isWorst || !before ? levels.below / levels.pixels : before.areaBelow,
      areaAbove: isWorst || !before ? levels.above / levels.pixels : before.areaAbove,
      frames: (before?.frames ?? 0) + 1,
      framesOutside: (before?.framesOutside ?? 0) + (isOutside ? 1 : 0),
    }
  }
  return { add, verdict: () => verdict }
}
