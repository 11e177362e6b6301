/** Least difference of a change and what its darker picture stays below, cd/m²: ITU-R BT.1702-3. */
const LEAST_DIFFERENCE = 20
const DARKER_BELOW = 160

/** Differences of decimals are not exact: what is short by this much is equal, and counts. */
const ROUNDING = 1e-9

/**
 * Whether luminance going from `darker` to `brighter` (cd/m², white 200), or back, is a change that
 * counts towards a flash: at least 20, the darker below 160. For SDR. Relative luminance times 200
 * makes it the rule of WCAG 2.2: at least 0.10, the darker below 0.80.
 */
export const isGeneralChange = (darker: number, brighter: number): boolean =>
  brighter - darker >= LEAST_DIFFERENCE - ROUNDING && darker < DARKER_BELOW
