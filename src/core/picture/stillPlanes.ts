import { at } from '../base/assert.ts'
import type { Planes } from './planes.ts'
import type { Still } from './still.ts'

const known = new WeakMap<Still, Planes>()

/**
 * A still as planes: R′G′B′ of 10 bits, narrow range, the base already in it (its coding has none).
 * Worked out once for each still.
 */
export const stillPlanes = (still: Still): Planes => {
  const before = known.get(still)
  if (before) return before
  const { width, height, rgb } = still
  const plane = (channel: number): Uint16Array =>
    Uint16Array.from({ length: width * height }, (_, i) => at(rgb, 3 * i + channel))
  const samples = [plane(0), plane(1), plane(2)] as const
  const planes: Planes = { width, height, layout: 'rgb', depth: 10, samples }
  known.set(still, planes)
  return planes
}
