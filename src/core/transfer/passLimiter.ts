import type { Limits, ToleranceProfile } from '../tolerance/profile.ts'
import type { PassPlan } from './passPlan.ts'
import { isSequence, type Limiting } from './transferSettings.ts'

/**
 * How much inside the limits a video is limited, as signal. What is just inside is put outside by
 * rounding Y′, Cb and Cr to 8 bits (R′, B′: by up to 0.65 %, half a code of each times its factor
 * in BT.709-6) and by the codec.
 */
export const VIDEO_MARGIN = 0.01

const inwards = ([low, high]: Limits): Limits => [low + VIDEO_MARGIN, high - VIDEO_MARGIN]

const narrowed = (profile: ToleranceProfile): ToleranceProfile => ({
  ...profile,
  rgb: profile.rgb && inwards(profile.rgb),
  luma: inwards(profile.luma),
  composite: profile.composite && inwards(profile.composite),
})

/** What the levels of a pass are limited to, and how; undefined where they are not. */
export const passLimiter = ({
  settings: { limiting, format },
  profile,
}: PassPlan): { readonly limiting: Limiting; readonly profile: ToleranceProfile } | undefined =>
  limiting === 'none'
    ? undefined
    : { limiting, profile: isSequence(format) ? profile : narrowed(profile) }
