import { bt1886ToLinear } from '../colour/bt1886.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import { srgbToLinear } from '../colour/srgb.ts'
import { anchoredLuminance } from './anchoredLuminance.ts'
import type { CellMeans } from './cellMeans.ts'
import { FLASH_WHITE } from './flashLimits.ts'
import { redExcess, seenRedShare } from './redFigures.ts'

/** How luminance is counted: three ways, as no one of them shows the largest changes everywhere. */
export const LUMINANCES = 3

/** Where a cell's figures lie, and how many there are. The luminances come first. */
export const SEEN_SHARE = 3
export const EXCESS = 4
export const FIGURES = 5

/** Steps of the tables a unit of signal; lines between them are within 1e-5 cd/m². */
const STEPS = 4096
/** The highest signal that ten bits of narrow range hold. */
const TOP = (1023 - 64) / 876

const tableOf = (light: (signal: number) => number): Float64Array =>
  Float64Array.from({ length: Math.ceil(TOP * STEPS) + 2 }, (_, i) => light(i / STEPS))

const BT1886 = tableOf((signal) => bt1886ToLinear(signal, FLASH_WHITE, 0))
const ANCHORED = tableOf(anchoredLuminance)
const SRGB = tableOf(srgbToLinear)

/** A place in the tables: a signal below black or above what ten bits hold is held there. */
const placeOf = (signal: number | undefined): number =>
  Math.max(0, Math.min(signal as number, TOP)) * STEPS

const lightAt = (table: Float64Array, place: number): number => {
  const step = Math.trunc(place)
  const low = table[step] as number
  return low + (place - step) * ((table[step + 1] as number) - low)
}

const [RED, GREEN, BLUE] = LUMA_WEIGHTS.bt709

/**
 * What the display would show of each cell, FIGURES numbers each, into `into`: luminance in cd/m²
 * by BT.1886 with white at 200, by the display of the 2005 anchors, and as relative luminance
 * (WCAG 2.2) times 200; then the figures of `redFigures.ts`, from linear sRGB.
 */
export const cellFigures = ({ r, g, b }: CellMeans, into: Float64Array): void => {
  for (let cell = 0; cell < r.length; cell++) {
    const atR = placeOf(r[cell])
    const atG = placeOf(g[cell])
    const atB = placeOf(b[cell])
    const red = lightAt(SRGB, atR)
    const green = lightAt(SRGB, atG)
    const blue = lightAt(SRGB, atB)
    const luminance = (table: Float64Array): number =>
      RED * lightAt(table, atR) + GREEN * lightAt(table, atG) + BLUE * lightAt(table, atB)
    const first = cell * FIGURES
    into[first] = luminance(BT1886)
    into[first + 1] = luminance(ANCHORED)
    into[first + 2] = FLASH_WHITE * (RED * red + GREEN * green + BLUE * blue)
    into[first + SEEN_SHARE] = seenRedShare(red, green, blue)
    into[first + EXCESS] = redExcess(red, green, blue)
  }
}
