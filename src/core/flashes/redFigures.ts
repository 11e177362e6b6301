/** The share of red in a colour from which it is saturated red: WCAG 2.2, red flash. */
export const SATURATED_SHARE = 0.8

/**
 * Linear red (0…1) below which a picture is taken for black, so that noise in the dark is no red:
 * a choice of this project. Shares fall to nothing from here down, not at once.
 */
const DARKEST_RED = 0.02

/** The share of red in a colour of linear light, R/(R + G + B), 0…1; 0 of black. */
export const redShare = (r: number, g: number, b: number): number => (r > 0 ? r / (r + g + b) : 0)

/** The share, less where a colour is all but black. */
export const seenRedShare = (r: number, g: number, b: number): number =>
  redShare(r, g, b) * Math.min(1, r / DARKEST_RED)

/** max(0, R − G − B)·320 of linear light: WCAG 2.0 and 2.1, red flash. */
export const redExcess = (r: number, g: number, b: number): number => Math.max(0, r - g - b) * 320
