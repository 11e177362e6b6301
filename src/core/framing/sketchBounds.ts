import type { Framing } from '../picture/framing.ts'
import { frameOutline } from './frameBox.ts'

/** A rectangle in heights of the scan. */
export type Bounds = {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** What a sketch must show so that the whole scan and the whole frames are on it. */
export const sketchBounds = (framings: readonly Framing[], aspect: number): Bounds => {
  const places = [
    [0, 0] as const,
    [aspect, 1] as const,
    ...framings.flatMap((framing) => frameOutline(framing, aspect)),
  ]
  const xs = places.map(([x]) => x)
  const ys = places.map(([, y]) => y)
  const [x, y] = [Math.min(...xs), Math.min(...ys)]
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }
}
