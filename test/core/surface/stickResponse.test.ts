import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  axisResponse,
  responseCurve,
  stickResponse,
} from '../../../src/core/surface/stickResponse.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const response = fc.record({ deadZone: real(0, 0.9), exponent: real(0.5, 5) })
const deflection = real(-1, 1)

describe('the response to one deflection', () => {
  it('is odd', () => {
    fc.assert(
      fc.property(deflection, response, (x, r) => {
        expect(axisResponse(-x, r) + axisResponse(x, r)).toBe(0)
      }),
    )
  })

  it('never falls as the deflection grows', () => {
    fc.assert(
      fc.property(deflection, deflection, response, (a, b, r) => {
        const [low, high] = a < b ? [a, b] : [b, a]
        expect(axisResponse(low, r)).toBeLessThanOrEqual(axisResponse(high, r))
      }),
    )
  })

  it('is nothing inside the dead zone and everything at the end', () => {
    fc.assert(
      fc.property(real(-1, 1), response, (part, r) => {
        expect(axisResponse(part * r.deadZone, r)).toBe(0)
        expect(axisResponse(1, r)).toBe(1)
        expect(axisResponse(-1, r)).toBe(-1)
      }),
    )
  })

  it('starts from nothing at the edge of the dead zone', () => {
    fc.assert(
      fc.property(response, (r) => {
        // The exponent is 0.5 or more: no steeper than a root.
        const past = 1e-6 * (1 - r.deadZone)
        expect(axisResponse(r.deadZone + past, r)).toBeLessThanOrEqual(1.01e-3)
        expect(axisResponse(r.deadZone + past, r)).toBeGreaterThan(0)
      }),
    )
  })

  it('is a power of the travel that is left', () => {
    expect(axisResponse(0.6, { deadZone: 0.2, exponent: 2 })).toBeCloseTo(0.25, 12)
    expect(axisResponse(-0.6, { deadZone: 0.2, exponent: 1 })).toBeCloseTo(-0.5, 12)
  })
})

describe('the response of a stick', () => {
  it('keeps its direction', () => {
    fc.assert(
      fc.property(deflection, deflection, response, (x, y, r) => {
        const out = stickResponse({ x, y }, r)
        expect(out.x * y - out.y * x).toBeCloseTo(0, 12)
        expect(out.x * x + out.y * y).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('goes by how far the stick is out, whichever way', () => {
    fc.assert(
      fc.property(real(0, 1), real(0, 2 * Math.PI), response, (travel, angle, r) => {
        const { x, y } = stickResponse(
          { x: travel * Math.cos(angle), y: travel * Math.sin(angle) },
          r,
        )
        expect(Math.hypot(x, y)).toBeCloseTo(axisResponse(travel, r), 6)
      }),
    )
  })

  it('counts the corners of a square travel as the rim', () => {
    const { x, y } = stickResponse({ x: 1, y: 1 }, { deadZone: 0.1, exponent: 2 })
    expect(x).toBeCloseTo(Math.SQRT1_2, 12)
    expect(y).toBeCloseTo(Math.SQRT1_2, 12)
  })
})

it('the curve that is shown is the response', () => {
  const r = { deadZone: 0.25, exponent: 3 }
  const curve = responseCurve(r, 8)
  expect(curve).toHaveLength(9)
  expect(curve[2]).toEqual({ x: 0.25, y: 0 })
  expect(curve[8]).toEqual({ x: 1, y: 1 })
  expect(curve[5]?.y).toBe(axisResponse(5 / 8, r))
})
