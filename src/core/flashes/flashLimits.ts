import { nominalFramesPerSecond, type Rate } from '../time/rate.ts'

/** White of the display that luminance is counted for, cd/m²: ITU-R BT.1702-3, note 3 (SDR). */
export const FLASH_WHITE = 200

/** Opposing changes that may fall within any second, three flashes: ITU-R BT.1702-3. */
export const MOST_CHANGES = 6

/** A sequence that flashes for longer may be a risk though it complies: ITU-R BT.1702-3, seconds. */
export const LONG_SEQUENCE = 5

/**
 * Changes within a second from which pictures are said to go on flashing: two flashes. A choice of
 * this project; the standard gives no number.
 */
export const FLASHING_CHANGES = 4

/** Whether a part of the picture is more than a quarter of it: exactly a quarter passes. */
export const isTooLarge = (part: number, whole: number): boolean => part * 4 > whole

/** The frames whose changes can fall within one second: those less than a second apart. */
export const framesWithinSecond = ({ num, den }: Rate): number => Math.ceil(num / den)

/** Sums of decimals are not exact: this much of a frame less is still the frame. */
const ROUNDING = 1e-9

/**
 * Frames between leading edges from which flashes are always allowed: 360 ms, and a third of a
 * second (10 frames at 30) at 30 and 60 Hz and what goes by their pace. ITU-R BT.1702-3.
 */
export const allowedSpacing = (rate: Rate): number => {
  const seconds = nominalFramesPerSecond(rate) % 30 === 0 ? 1 / 3 : 0.36
  return Math.ceil((seconds * rate.num) / rate.den - ROUNDING)
}
