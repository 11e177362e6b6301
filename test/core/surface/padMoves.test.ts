import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { padSpeeds } from '../../../src/core/surface/padMoves.ts'
import { readPad } from '../../../src/core/surface/padReading.ts'
import { FIRST_SURFACE_SETUP, type SurfaceSetup } from '../../../src/core/surface/surfaceSetup.ts'

const LINE: SurfaceSetup = {
  ...FIRST_SURFACE_SETUP,
  response: { deadZone: 0, exponent: 1 },
  speeds: { tint: 0.1, level: 0.2, framing: 0.3 },
  fine: 0.25,
}

/** A pad with these axes, and these buttons pressed so far. */
const padWith = (axes: readonly number[], pressed: Readonly<Record<number, number>> = {}) =>
  readPad({
    axes,
    buttons: Array.from({ length: 17 }, (_, i) => {
      const value = pressed[i] ?? 0
      return { value, pressed: value > 0.1 }
    }),
  })

const speedsOf = (axes: readonly number[], pressed: Readonly<Record<number, number>> = {}) =>
  Object.fromEntries(padSpeeds(padWith(axes, pressed), LINE))

describe('what a pad moves', () => {
  it('nothing at rest', () => {
    expect(speedsOf([0, 0, 0, 0])).toEqual({})
  })

  it('tints shadows by the left stick: Cb across, Cr up', () => {
    expect(speedsOf([1, 0, 0, 0])).toEqual({ 'lift-cb': 0.1 })
    expect(speedsOf([0, -0.5, 0, 0])).toEqual({ 'lift-cr': 0.05 })
  })

  it('tints highlights by the right stick', () => {
    expect(speedsOf([0, 0, -1, 0])).toEqual({ 'gain-cb': -0.1 })
    expect(speedsOf([0, 0, 0, 1])).toEqual({ 'gain-cr': -0.1 })
  })

  it('moves black and white by shoulders and triggers, as far as they are pressed', () => {
    expect(speedsOf([], { 4: 1 })).toEqual({ 'lift-all': 0.2 })
    expect(speedsOf([], { 6: 0.5 })).toEqual({ 'lift-all': -0.1 })
    expect(speedsOf([], { 5: 1 })).toEqual({ 'gain-all': 0.2 })
    expect(speedsOf([], { 7: 1 })).toEqual({ 'gain-all': -0.2 })
  })

  it('leaves a number in peace that two controls pull apart', () => {
    expect(speedsOf([], { 4: 1, 6: 1 })['lift-all']).toBe(0)
  })

  it('moves gamma, saturation, the mid tint and the view while the second use is held', () => {
    expect(speedsOf([1, 0, 0, 0], { 2: 1 })).toEqual({ 'gamma-cb': 0.1 })
    expect(speedsOf([], { 14: 1, 4: 1 })).toEqual({ 'gamma-all': 0.2 })
    expect(speedsOf([], { 14: 1, 7: 1 })).toEqual({ saturation: -0.2 })
    // A stick pushed up moves the view up: tilt is counted downward.
    expect(speedsOf([0, 0, 0, -1], { 2: 1 })).toEqual({ tilt: -0.3 })
  })

  it('moves by a part while fine is held', () => {
    expect(speedsOf([1, 0, 0, 0], { 10: 1 })).toEqual({ 'lift-cb': 0.025 })
  })

  it('is as fast in every direction', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (angle) => {
        const speeds = speedsOf([Math.cos(angle), Math.sin(angle), 0, 0])
        expect(Math.hypot(speeds['lift-cb'] ?? 0, speeds['lift-cr'] ?? 0)).toBeCloseTo(0.1, 9)
      }),
    )
  })
})

describe('reading a pad', () => {
  it('is at rest where the browser tells nothing or nonsense', () => {
    const { sticks, buttons } = readPad({
      axes: [Number.NaN],
      buttons: [{ value: Number.NaN, pressed: false }],
    })
    expect(sticks).toEqual({ left: { x: 0, y: 0 }, right: { x: 0, y: 0 } })
    expect(buttons).toEqual([0])
  })

  it('takes a button without travel as wholly pressed', () => {
    expect(readPad({ axes: [], buttons: [{ value: 0, pressed: true }] }).buttons).toEqual([1])
  })

  it('keeps within ±1', () => {
    expect(readPad({ axes: [1.2, -3], buttons: [] }).sticks.left).toEqual({ x: 1, y: 1 })
  })
})
