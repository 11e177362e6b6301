/** How far a control is moved, made into how fast a number moves. */
export type Response = {
  /** The part of the travel about the middle that does nothing, 0…0.9. */
  readonly deadZone: number
  /** The exponent of the curve beyond it, above 0: 1 is a line, 2 is gentle near the middle. */
  readonly exponent: number
}

/** A deflection across and up, each −1…1. */
export type Deflection = { readonly x: number; readonly y: number }

/**
 * The response to one deflection, −1…1 to −1…1: nothing inside the dead zone, from there on a power
 * of what is left of the travel, so that it starts from nothing at the edge and is 1 at the end.
 * Common practice, no published source.
 */
export const axisResponse = (deflection: number, { deadZone, exponent }: Response): number => {
  const travel = Math.min(1, Math.abs(deflection))
  if (!(travel > deadZone)) return 0
  return Math.sign(deflection) * ((travel - deadZone) / (1 - deadZone)) ** exponent
}

/**
 * The response of a stick: the dead zone is round, and the direction is kept, so that a hue pushed
 * for is the hue that comes. Past the rim (the corners of a square travel) counts as the rim.
 */
export const stickResponse = ({ x, y }: Deflection, response: Response): Deflection => {
  const travel = Math.hypot(x, y)
  if (travel === 0) return { x: 0, y: 0 }
  const speed = axisResponse(travel, response)
  return { x: (x / travel) * speed, y: (y / travel) * speed }
}

/** The curve of a response: speeds, 0…1, at `pieces` + 1 even deflections from 0 to 1. */
export const responseCurve = (response: Response, pieces: number): readonly Deflection[] =>
  Array.from({ length: pieces + 1 }, (_, i) => ({
    x: i / pieces,
    y: axisResponse(i / pieces, response),
  }))
