import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dragCorner, zoomFrame } from '../../../src/core/framing/dragCorner.ts'
import {
  dragFrame,
  fieldsOfGrip,
  nudgeFrame,
  resetGrip,
  turnGripAt,
} from '../../../src/core/framing/dragFrame.ts'
import {
  CORNERS,
  type Corner,
  frameBox,
  type Place,
  placeInBox,
} from '../../../src/core/framing/frameBox.ts'
import { moveFrame } from '../../../src/core/framing/moveFrame.ts'
import { turnFrame, turnFrameTo } from '../../../src/core/framing/turnFrame.ts'
import { FRAMING_LIMITS } from '../../../src/core/job/commands/setFraming.ts'
import type { Framing } from '../../../src/core/picture/framing.ts'
import { arbAspect, arbFraming, framingWith } from './arbFraming.ts'

const arbCorner = fc.constantFrom(...(Object.keys(CORNERS) as Corner[]))
const arbAnchor = fc.constantFrom('opposite' as const, 'middle' as const)
const small = fc.double({ min: -0.05, max: 0.05, noNaN: true })
const anywhere = fc.double({ min: -20, max: 20, noNaN: true })
const arbBy: fc.Arbitrary<Place> = fc.tuple(small, small)
const arbPlace: fc.Arbitrary<Place> = fc.tuple(anywhere, anywhere)

const expectPlace = (place: Place, expected: Place) => {
  expect(place[0]).toBeCloseTo(expected[0], 8)
  expect(place[1]).toBeCloseTo(expected[1], 8)
}

const expectFraming = (framing: Framing, expected: Framing, digits = 8) => {
  for (const field of Object.keys(expected) as (keyof Framing)[])
    expect(framing[field]).toBeCloseTo(expected[field], digits)
}

const isWithinLimits = (framing: Framing): boolean =>
  (Object.keys(FRAMING_LIMITS) as (keyof Framing)[]).every(
    (field) =>
      framing[field] >= FRAMING_LIMITS[field][0] && framing[field] <= FRAMING_LIMITS[field][1],
  )

describe('moveFrame', () => {
  it('moves the frame over the scan by what was dragged, also when it is turned and squeezed', () => {
    fc.assert(
      fc.property(arbFraming, arbAspect, arbBy, (from, aspect, by) => {
        const before = frameBox(from, aspect).middle
        const after = frameBox(moveFrame(from, aspect, by), aspect).middle
        expectPlace(after, [before[0] + by[0], before[1] + by[1]])
      }),
    )
  })

  it('moved back is where it was', () => {
    fc.assert(
      fc.property(arbFraming, arbAspect, arbBy, (from, aspect, by) => {
        const there = moveFrame(from, aspect, by)
        expectFraming(moveFrame(there, aspect, [-by[0], -by[1]]), from)
      }),
    )
  })

  it('stops at the limits of pan and tilt', () => {
    const far = moveFrame(framingWith({ zoom: 2 }), 16 / 9, [9, -9])
    expect([far.pan, far.tilt]).toEqual([1, -1])
  })
})

describe('dragCorner', () => {
  it('puts the corner on the place, when that is on its diagonal', () => {
    fc.assert(
      fc.property(
        arbFraming,
        arbAspect,
        arbCorner,
        arbAnchor,
        fc.double({ min: 0.9, max: 1.1, noNaN: true }),
        (from, aspect, corner, anchor, size) => {
          const [right, down] = CORNERS[corner]
          const box = frameBox(from, aspect)
          const at = placeInBox(box, right, down)
          const fixed = anchor === 'middle' ? box.middle : placeInBox(box, -right, -down)
          const place: Place = [
            fixed[0] + size * (at[0] - fixed[0]),
            fixed[1] + size * (at[1] - fixed[1]),
          ]
          const after = frameBox(dragCorner(from, aspect, corner, anchor, place), aspect)
          expectPlace(placeInBox(after, right, down), place)
          const still = anchor === 'middle' ? after.middle : placeInBox(after, -right, -down)
          expectPlace(still, fixed)
        },
      ),
    )
  })

  it('puts the corner as near to any other place as the shape allows', () => {
    fc.assert(
      fc.property(arbFraming, arbAspect, arbCorner, arbBy, (from, aspect, corner, by) => {
        const [right, down] = CORNERS[corner]
        const at = placeInBox(frameBox(from, aspect), right, down)
        const place: Place = [at[0] + by[0], at[1] + by[1]]
        const distance = (zoom: number) => {
          const box = frameBox(zoomFrame(from, aspect, corner, 'opposite', zoom), aspect)
          const [x, y] = placeInBox(box, right, down)
          return Math.hypot(x - place[0], y - place[1])
        }
        const { zoom } = dragCorner(from, aspect, corner, 'opposite', place)
        const best = distance(zoom)
        expect(best).toBeLessThanOrEqual(distance(zoom * 1.001) + 1e-12)
        expect(best).toBeLessThanOrEqual(distance(zoom / 1.001) + 1e-12)
      }),
    )
  })

  it('keeps the shape, the turn and the blanking of the frame', () => {
    fc.assert(
      fc.property(arbFraming, arbAspect, arbCorner, arbPlace, (from, aspect, corner, place) => {
        const after = dragCorner(from, aspect, corner, 'opposite', place)
        expect(after.squeeze).toBe(from.squeeze)
        expect(after.rotation).toBe(from.rotation)
        expect(after.blanking).toBe(from.blanking)
      }),
    )
  })

  it('leaves what is fixed where it was, also where it is stopped', () => {
    fc.assert(
      fc.property(
        arbFraming,
        arbAspect,
        arbCorner,
        arbAnchor,
        arbPlace,
        (from, aspect, corner, anchor, place) => {
          const [right, down] = anchor === 'middle' ? [0, 0] : CORNERS[corner]
          const before = placeInBox(frameBox(from, aspect), -right, -down)
          const after = dragCorner(from, aspect, corner, anchor, place)
          expectPlace(placeInBox(frameBox(after, aspect), -right, -down), before)
        },
      ),
    )
  })
})

describe('turnFrameTo', () => {
  it('makes the top of the frame point to the place and leaves its middle', () => {
    fc.assert(
      fc.property(arbFraming, arbAspect, arbPlace, (from, aspect, place) => {
        const before = frameBox(from, aspect).middle
        const length = Math.hypot(place[0] - before[0], place[1] - before[1])
        fc.pre(length > 1e-3)
        const to = turnFrameTo({ ...from, pan: 0.1, tilt: -0.1 }, aspect, place)
        const box = frameBox(to, aspect)
        const middle = frameBox({ ...from, pan: 0.1, tilt: -0.1 }, aspect).middle
        fc.pre(Math.abs(to.pan) < 1 && Math.abs(to.tilt) < 1)
        expectPlace(box.middle, middle)
        const top = placeInBox(box, 0, -1)
        const cross =
          (top[0] - middle[0]) * (place[1] - middle[1]) -
          (top[1] - middle[1]) * (place[0] - middle[0])
        expect(cross / length).toBeCloseTo(0, 8)
        expect(
          (top[0] - middle[0]) * (place[0] - middle[0]) +
            (top[1] - middle[1]) * (place[1] - middle[1]),
        ).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('turned back is where it was', () => {
    fc.assert(
      fc.property(arbFraming, arbAspect, fc.integer({ min: -9, max: 9 }), (from, aspect, by) => {
        const there = turnFrame(from, aspect, from.rotation + by)
        fc.pre(Math.abs(there.pan) < 1 && Math.abs(there.tilt) < 1)
        expectFraming(turnFrame(there, aspect, from.rotation), from)
      }),
    )
  })

  it('stays in −180°…180°', () => {
    expect(turnFrame(framingWith({}), 1.5, 190).rotation).toBe(-170)
    expect(turnFrame(framingWith({}), 1.5, -181).rotation).toBe(179)
  })
})

describe('dragFrame', () => {
  const arbGrip = fc.constantFrom(
    'move' as const,
    'turn' as const,
    ...(Object.keys(CORNERS) as Corner[]),
  )

  it('by nothing changes nothing but the last decimals', () => {
    fc.assert(
      fc.property(arbFraming, arbAspect, arbGrip, arbAnchor, (from, aspect, grip, anchor) => {
        const to = dragFrame(from, aspect, { grip, by: [0, 0], anchor, arm: 0.1 })
        expectFraming(to, from, 4)
      }),
    )
  })

  it('stays within the limits and changes only what the grip is for', () => {
    fc.assert(
      fc.property(
        arbFraming,
        arbAspect,
        arbGrip,
        arbAnchor,
        arbPlace,
        (from, aspect, grip, anchor, by) => {
          const to = dragFrame(from, aspect, { grip, by, anchor, arm: 0.1 })
          expect(isWithinLimits(to)).toBe(true)
          for (const field of Object.keys(from) as (keyof Framing)[])
            if (!fieldsOfGrip(grip).includes(field)) expect(to[field]).toBeCloseTo(from[field], 4)
        },
      ),
    )
  })

  it('the turning handle follows the pointer round the frame', () => {
    const from = framingWith({ zoom: 2 })
    const [x, y] = turnGripAt(from, 1.5, 0.25)
    expectPlace([x, y], [0.75, 0])
    // From straight over the middle to straight right of it: the frame turns clockwise.
    const to = dragFrame(from, 1.5, { grip: 'turn', by: [0.5, 0.5], anchor: 'middle', arm: 0.25 })
    expect(to.rotation).toBe(-90)
    expectPlace(turnGripAt(to, 1.5, 0.25), [1.25, 0.5])
  })
})

describe('nudgeFrame', () => {
  it('moves pan and tilt by tenths of a percent', () => {
    const to = nudgeFrame(framingWith({ pan: 0.1 }), 1.5, 'move', [1, -10], 'opposite')
    expect(to).toEqual(framingWith({ pan: 0.101, tilt: -0.01 }))
  })

  it('an arrow away from the middle makes the frame larger', () => {
    const from = framingWith({ zoom: 1.5 })
    expect(nudgeFrame(from, 1.5, 'top-left', [-1, 0], 'middle').zoom).toBe(1.49)
    expect(nudgeFrame(from, 1.5, 'top-left', [0, 1], 'middle').zoom).toBe(1.51)
    expect(nudgeFrame(from, 1.5, 'bottom-right', [0, 1], 'middle').zoom).toBe(1.49)
  })

  it('the top of the frame goes the way of the arrow', () => {
    const to = nudgeFrame(framingWith({}), 1.5, 'turn', [1, 0], 'opposite')
    expect(to.rotation).toBe(-0.1)
    expect(placeInBox(frameBox(to, 1.5), 0, -1)[0]).toBeGreaterThan(0.75)
  })

  it('stops at the limits', () => {
    fc.assert(
      fc.property(
        arbFraming,
        arbAspect,
        fc.constantFrom('move' as const, 'turn' as const, 'top-left' as const),
        fc.tuple(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: -9999, max: 9999 })),
        (from, aspect, grip, by) => {
          expect(isWithinLimits(nudgeFrame(from, aspect, grip, by, 'opposite'))).toBe(true)
        },
      ),
    )
  })
})

describe('resetGrip', () => {
  it('puts back what the grip is for', () => {
    const from = framingWith({ zoom: 2, pan: 0.2, tilt: 0.1, rotation: 5, squeeze: 2 })
    expect(resetGrip(from, 1.5, 'move')).toMatchObject({ pan: 0, tilt: 0, zoom: 2, rotation: 5 })
    expect(resetGrip(from, 1.5, 'turn')).toMatchObject({ rotation: 0, zoom: 2 })
    const whole = resetGrip(from, 1.5, 'top-left')
    expect(whole.zoom).toBe(1)
    expectPlace(
      frameBox(whole, 1.5).middle.map((value) => Number(value.toFixed(4))) as unknown as Place,
      frameBox(from, 1.5).middle.map((value) => Number(value.toFixed(4))) as unknown as Place,
    )
  })
})
