import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  frameBox,
  frameOutline,
  framingOfBox,
  openOutline,
  placeInBox,
} from '../../../src/core/framing/frameBox.ts'
import {
  type Framing,
  framingMap,
  framingOutline,
  IDENTITY_FRAMING,
} from '../../../src/core/picture/framing.ts'
import { arbAspect, arbFraming, framingWith } from './arbFraming.ts'

describe('frameBox', () => {
  it('at rest is the whole scan', () => {
    expect(frameBox(IDENTITY_FRAMING, 1.5)).toEqual({
      middle: [0.75, 0.5],
      width: 1.5,
      height: 1,
      rotation: 0,
    })
  })

  it('is half as wide at squeeze 2, and a frame to the right at pan 1', () => {
    const box = frameBox(framingWith({ squeeze: 2, pan: 1 }), 1.5)
    expect(box.width).toBeCloseTo(0.75, 12)
    expect(box.middle[0]).toBeCloseTo(1.5, 12)
  })

  it('lies where the map that draws the picture says, pixel by pixel', () => {
    fc.assert(
      fc.property(
        arbFraming,
        arbAspect,
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (framing, aspect, right, down) => {
          const [height, width] = [1000, 1000 * aspect]
          const map = framingMap(framing, width, height)
          const [x, y] = [((right + 1) * width) / 2 - 0.5, ((down + 1) * height) / 2 - 0.5]
          const [px, py] = placeInBox(frameBox(framing, aspect), right, down)
          expect(px * height).toBeCloseTo(map.xx * x + map.xy * y + map.offsetX + 0.5, 6)
          expect(py * height).toBeCloseTo(map.yx * x + map.yy * y + map.offsetY + 0.5, 6)
        },
      ),
    )
  })

  it('comes back as the framing it came from', () => {
    fc.assert(
      fc.property(arbFraming, arbAspect, (framing, aspect) => {
        const back = framingOfBox(frameBox(framing, aspect), aspect, framing.blanking)
        for (const field of Object.keys(framing) as (keyof Framing)[])
          expect(back[field]).toBeCloseTo(framing[field], 9)
      }),
    )
  })
})

describe('openOutline', () => {
  it('is the outline that the picture functions draw', () => {
    fc.assert(
      fc.property(arbFraming, arbAspect, (framing, aspect) => {
        const expected = framingOutline(framing, aspect, 1)
        for (const [i, [x, y]] of openOutline(framing, aspect).entries()) {
          expect(x).toBeCloseTo(expected[i]?.[0] ?? Number.NaN, 9)
          expect(y).toBeCloseTo(expected[i]?.[1] ?? Number.NaN, 9)
        }
      }),
    )
  })

  it('is the whole frame without blanking, and lower or narrower with it', () => {
    const aspect = 16 / 9
    expect(openOutline(IDENTITY_FRAMING, aspect)).toEqual(frameOutline(IDENTITY_FRAMING, aspect))
    expect(openOutline(framingWith({ blanking: 0.2 }), aspect)[0]).toEqual([0, expect.closeTo(0.1)])
    expect(openOutline(framingWith({ blanking: -0.25 }), aspect)[2]).toEqual([
      expect.closeTo(aspect * 0.875),
      1,
    ])
  })
})
