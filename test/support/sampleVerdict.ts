import { frame } from '../../src/core/time/frame.ts'
import type { Verdict } from '../../src/core/tolerance/verdict.ts'

const SPAN = { low: 0, high: 1 }

/** A made-up verdict on ten frames. */
export const verdictOf = (isInside: boolean): Verdict => ({
  profile: 'ebu-r103-v3',
  isInside,
  r: SPAN,
  g: SPAN,
  b: SPAN,
  y: SPAN,
  worstFrame: frame(0),
  areaOutside: isInside ? 0 : 0.2,
  areaBelow: 0,
  areaAbove: isInside ? 0 : 0.2,
  frames: 10,
  framesOutside: isInside ? 0 : 10,
})
