import fc from 'fast-check'
import { expect, it } from 'vitest'
import { readSetup } from '../../../src/core/surface/readSetup.ts'
import { FIRST_SURFACE_SETUP, type SurfaceSetup } from '../../../src/core/surface/surfaceSetup.ts'

const asKept = (setup: unknown): unknown => JSON.parse(JSON.stringify(setup))

it('a setup comes back as it was kept', () => {
  const setup: SurfaceSetup = {
    response: { deadZone: 0.2, exponent: 1.5 },
    speeds: { tint: 0.5, level: 0.1, framing: 1 },
    fine: 0.1,
    pad: {
      sticks: { left: { first: 'nothing' }, right: { first: 'pan-tilt', second: 'gain-tint' } },
      buttons: {
        0: { first: { kind: 'fine' } },
        18: {
          first: { kind: 'number', id: 'gamma-b', direction: -1 },
          second: { kind: 'command', id: 'play' },
        },
      },
    },
    midi: {
      isOn: true,
      bindings: [
        {
          control: { kind: 'change', channel: 16, number: 119 },
          coding: 'twos-complement',
          use: { kind: 'number', id: 'zoom' },
        },
        {
          control: { kind: 'note', channel: 1, number: 0 },
          coding: 'position',
          use: { kind: 'reset', id: 'saturation' },
        },
      ],
    },
  }
  expect(readSetup(asKept(setup))).toEqual(setup)
  expect(readSetup(asKept(FIRST_SURFACE_SETUP))).toEqual(FIRST_SURFACE_SETUP)
})

it('a broken part is as it was at first, the others are kept', () => {
  const kept = { ...FIRST_SURFACE_SETUP, fine: 0.5, response: { deadZone: 2, exponent: 1 } }
  expect(readSetup(asKept(kept))).toEqual({ ...FIRST_SURFACE_SETUP, fine: 0.5 })
})

it('whatever was kept gives a setup that can be used', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (kept) => {
      const { response, pad, midi } = readSetup(kept)
      expect(response.deadZone).toBeLessThan(1)
      expect(pad.sticks.left.first).toBeDefined()
      expect(Array.isArray(midi.bindings)).toBe(true)
    }),
  )
})
