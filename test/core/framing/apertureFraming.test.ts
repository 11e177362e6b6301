import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { apertureFraming } from '../../../src/core/framing/apertureFraming.ts'
import { frameOutline } from '../../../src/core/framing/frameBox.ts'
import { sketchBounds } from '../../../src/core/framing/sketchBounds.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { arbAspect, arbFraming, framingWith } from './arbFraming.ts'

describe('apertureFraming', () => {
  it('shows the scan at 0.8 while the frame is on it', () => {
    expect(apertureFraming(framingWith({ zoom: 2, pan: 0.4 }), 16 / 9)).toEqual(
      framingWith({ zoom: 0.8 }),
    )
  })

  it('shows the whole frame, however far it reaches', () => {
    fc.assert(
      fc.property(
        fc.oneof(arbFraming, fc.constant(framingWith({ zoom: 0.25, squeeze: 0.25, pan: 1 }))),
        arbAspect,
        (framing, aspect) => {
          const { zoom } = apertureFraming(framing, aspect)
          expect(zoom).toBeLessThanOrEqual(0.8)
          for (const [x, y] of frameOutline(framing, aspect)) {
            expect(Math.abs((2 * x) / aspect - 1) * zoom).toBeLessThanOrEqual(0.8 + 1e-9)
            expect(Math.abs(2 * y - 1) * zoom).toBeLessThanOrEqual(0.8 + 1e-9)
          }
        },
      ),
    )
  })
})

describe('sketchBounds', () => {
  it('is the scan while the frame is on it', () => {
    expect(sketchBounds([IDENTITY_FRAMING], 1.5)).toEqual({ x: 0, y: 0, width: 1.5, height: 1 })
  })

  it('holds the scan and every corner', () => {
    fc.assert(
      fc.property(arbFraming, arbFraming, arbAspect, (a, b, aspect) => {
        const { x, y, width, height } = sketchBounds([a, b], aspect)
        const places = [[0, 0], [aspect, 1], ...frameOutline(a, aspect), ...frameOutline(b, aspect)]
        for (const [px, py] of places as [number, number][]) {
          expect(px).toBeGreaterThanOrEqual(x)
          expect(py).toBeGreaterThanOrEqual(y)
          expect(px).toBeLessThanOrEqual(x + width + 1e-12)
          expect(py).toBeLessThanOrEqual(y + height + 1e-12)
        }
      }),
    )
  })
})
