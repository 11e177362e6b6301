import type { MatrixName } from '../picture/planes.ts'
import type { LevelRange } from './bendLevel.ts'
import type { Limits, ToleranceProfile } from './profile.ts'

/** The part of the range between two limits over which the soft limiter bends, at each end. */
export const KNEE_PART = 0.1

/** What brings colours inside a profile: `limitColour`. */
export type Limiter = {
  /** The luma equation that the profile's Y′ is measured by. */
  readonly matrix: MatrixName
  readonly rgb: LevelRange | undefined
  /** Undefined where R′G′B′ inside their limits cannot have Y′ outside its own. */
  readonly luma: LevelRange | undefined
  readonly composite: LevelRange | undefined
  /** Greys that are inside every limit: where colours are moved towards. */
  readonly neutral: Limits
}

const greysInside = ({ rgb, luma, composite }: ToleranceProfile): Limits => {
  const all = [luma, ...(rgb ? [rgb] : []), ...(composite ? [composite] : [])]
  const low = Math.max(...all.map(([least]) => least))
  const high = Math.min(...all.map(([, most]) => most))
  // Limits that shut each other out have no colour inside; grey between them is least outside.
  return low <= high ? [low, high] : [(low + high) / 2, (low + high) / 2]
}

/**
 * The limiter of a profile, for pictures whose Y′ is by `matrix`. 'hard' clips at the limits;
 * 'soft' bends over the last tenth of the range before each.
 */
export const limiterOf = (
  profile: ToleranceProfile,
  limiting: 'soft' | 'hard',
  matrix: MatrixName,
): Limiter => {
  const neutral = greysInside(profile)
  const rangeOf = ([low, high]: Limits): LevelRange => ({
    low,
    high,
    knee: limiting === 'soft' ? KNEE_PART * (high - low) : 0,
  })
  const { rgb, composite } = profile
  const luma = rangeOf(profile.luma)
  const isHeldByRgb = rgb !== null && rgb[0] >= luma.low && rgb[1] <= luma.high
  // A knee that begins before the grey it moves towards would turn colours over.
  const room = Math.min(luma.high - neutral[0], neutral[1] - luma.low)
  return {
    matrix,
    rgb: rgb ? rangeOf(rgb) : undefined,
    luma: isHeldByRgb ? undefined : { ...luma, knee: Math.max(0, Math.min(luma.knee, room)) },
    composite: composite ? rangeOf(composite) : undefined,
    neutral,
  }
}
