import { FRAMING_LIMITS } from '../job/commands/setFraming.ts'
import type { Framing } from '../picture/framing.ts'

/** A value of a framing, kept within its limits. */
export const withinLimit = (field: keyof Framing, value: number): number => {
  const [low, high] = FRAMING_LIMITS[field]
  return Math.min(high, Math.max(low, value))
}

/** Whether a value can go no further one way: it is the most or the least there is. */
export const isAtLimit = (field: keyof Framing, value: number): boolean => {
  const [low, high] = FRAMING_LIMITS[field]
  return value <= low || value >= high
}

/**
 * To five decimals, which is within a fiftieth of a pixel of 1920: what a drag leaves in the job.
 */
export const tidyFraming = (framing: Framing): Framing => {
  const tidy = (value: number) => Number(value.toFixed(5)) + 0
  return {
    zoom: tidy(framing.zoom),
    pan: tidy(framing.pan),
    tilt: tidy(framing.tilt),
    rotation: tidy(framing.rotation),
    squeeze: tidy(framing.squeeze),
    blanking: tidy(framing.blanking),
  }
}
