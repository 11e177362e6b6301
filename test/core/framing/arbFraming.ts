import fc from 'fast-check'
import { type Framing, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Shapes of delivered pictures: 4 : 3, 16 : 9, and between and beyond. */
export const arbAspect = fc.oneof(fc.constantFrom(4 / 3, 16 / 9), within(1, 2.4))

/** Framings well inside the limits, so that a small drag does not reach one. */
export const arbFraming: fc.Arbitrary<Framing> = fc.record({
  zoom: within(0.5, 3),
  pan: within(-0.3, 0.3),
  tilt: within(-0.3, 0.3),
  rotation: within(-170, 170),
  squeeze: within(0.5, 2.5),
  blanking: within(-0.5, 0.5),
})

export const framingWith = (parts: Partial<Framing>): Framing => ({ ...IDENTITY_FRAMING, ...parts })
