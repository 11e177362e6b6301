import { EXCESS, FIGURES, SEEN_SHARE } from './cellFigures.ts'
import type { Turns } from './generalTurns.ts'
import { SATURATED_SHARE } from './redFigures.ts'

/** What the excess must change by: WCAG 2.0 and 2.1. */
const LEAST_EXCESS = 20

/**
 * What the share must move by for red to come or go, so that a colour on the border does not do so
 * with the noise: a choice of this project. Colours that are 0.2 apart in u′v′ (WCAG 2.2) have
 * shares further apart.
 */
const LEAST_SHARE = 0.1

const ROUNDING = 1e-9

/** Whether saturated red comes between a lower and a higher share, or goes. */
const isTransition = (lower: number, higher: number): boolean =>
  higher >= SATURATED_SHARE && lower < SATURATED_SHARE && higher - lower >= LEAST_SHARE - ROUNDING

/**
 * Follows the red of `count` cells as `createGeneralTurns` does their luminance. A cell turns where
 * saturated red comes or goes, whatever the luminance (ITU-R BT.1702-3; so whenever the definition
 * of WCAG 2.2 does), or where one state is saturated red and R − G − B changes as WCAG 2.0 and 2.1
 * define.
 */
export const createRedTurns = (count: number) => {
  const lowShares = new Float64Array(count).fill(Infinity)
  const highShares = new Float64Array(count).fill(-Infinity)
  const lowExcess = new Float64Array(count).fill(Infinity)
  const highExcess = new Float64Array(count).fill(-Infinity)
  /** The shares where excess was lowest and highest. */
  const shareAtLow = new Float64Array(count)
  const shareAtHigh = new Float64Array(count)
  const turns = new Int8Array(count)
  const last = new Int8Array(count)
  return (figures: Float64Array): Turns => {
    for (let cell = 0; cell < count; cell++) {
      const share = figures[cell * FIGURES + SEEN_SHARE] as number
      const excess = figures[cell * FIGURES + EXCESS] as number
      if (share < (lowShares[cell] as number)) lowShares[cell] = share
      if (share > (highShares[cell] as number)) highShares[cell] = share
      if (excess < (lowExcess[cell] as number)) {
        lowExcess[cell] = excess
        shareAtLow[cell] = share
      }
      if (excess > (highExcess[cell] as number)) {
        highExcess[cell] = excess
        shareAtHigh[cell] = share
      }
      const isUp =
        isTransition(lowShares[cell] as number, share) ||
        (excess - (lowExcess[cell] as number) > LEAST_EXCESS &&
          Math.max(share, shareAtLow[cell] as number) >= SATURATED_SHARE)
      const isDown =
        isTransition(share, highShares[cell] as number) ||
        ((highExcess[cell] as number) - excess > LEAST_EXCESS &&
          Math.max(share, shareAtHigh[cell] as number) >= SATURATED_SHARE)
      const before = last[cell] as number
      const turn = isUp && before !== 1 ? 1 : isDown && before !== -1 ? -1 : 0
      turns[cell] = turn
      if (turn === 0) continue
      last[cell] = turn
      lowShares[cell] = share
      highShares[cell] = share
      lowExcess[cell] = excess
      highExcess[cell] = excess
      shareAtLow[cell] = share
      shareAtHigh[cell] = share
    }
    return turns
  }
}
