const GAMMA = 2.4

/** The luminances of black and white to the power 1/2.4, white's counted from black's. */
const roots = (white: number, black: number) => {
  const foot = black ** (1 / GAMMA)
  return { foot, swing: white ** (1 / GAMMA) - foot }
}

/**
 * Signal (0 black, 1 peak) → screen luminance in cd/m² of a reference display with white at
 * `white` and black at `black` cd/m² (white > black ≥ 0). BT.1886 (2011) annex 1,
 * L = a·max(V + b, 0)^2.4, with a and b multiplied out.
 */
export const bt1886ToLinear = (signal: number, white: number, black: number): number => {
  const { foot, swing } = roots(white, black)
  return Math.max(signal * swing + foot, 0) ** GAMMA
}

/** Screen luminance in cd/m² (0 or more) → signal: the inverse of `bt1886ToLinear`. */
export const linearToBt1886 = (luminance: number, white: number, black: number): number => {
  const { foot, swing } = roots(white, black)
  return (luminance ** (1 / GAMMA) - foot) / swing
}
