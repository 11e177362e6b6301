import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  learntBinding,
  type MidiBinding,
  stepsOf,
  withBinding,
} from '../../../src/core/surface/midiBinding.ts'
import { controlName, readMidi } from '../../../src/core/surface/midiMessage.ts'
import { NOT_TAKEN, takeOver } from '../../../src/core/surface/takeOver.ts'

describe('MIDI messages (MIDI 1.0 Detailed Specification 4.2, table I)', () => {
  it('control change', () => {
    expect(readMidi([0xb2, 20, 127])).toEqual({
      control: { kind: 'change', channel: 3, number: 20 },
      raw: 127,
      position: 1,
    })
  })

  it('note on, off, and on with no velocity', () => {
    expect(readMidi([0x90, 60, 100])?.control).toEqual({ kind: 'note', channel: 1, number: 60 })
    expect(readMidi([0x80, 60, 64])?.raw).toBe(0)
    expect(readMidi([0x90, 60, 0])?.position).toBe(0)
  })

  it('pitch bend, low seven bits first', () => {
    expect(readMidi([0xe0, 0, 64])).toMatchObject({ raw: 8192, position: 0.5 })
    expect(readMidi([0xe0, 127, 127])).toMatchObject({ raw: 16383, position: 1 })
    expect(readMidi([0xe0, 1, 0])?.raw).toBe(1)
  })

  it('the middle of a control change is the middle', () => {
    expect(readMidi([0xb0, 1, 64])?.position).toBe(0.5)
  })

  it('the position grows with the value', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 126 }), (raw) => {
        const at = (value: number) => readMidi([0xb0, 1, value])?.position ?? -1
        expect(at(raw + 1)).toBeGreaterThan(at(raw))
      }),
    )
  })

  it('what is not of a control is let go', () => {
    expect(readMidi([0xf8])).toBeUndefined()
    expect(readMidi([0xc0, 5])).toBeUndefined()
    expect(readMidi([0xb0, 123, 0])).toBeUndefined()
    expect(readMidi([0xb0, 200, 0])).toBeUndefined()
    expect(readMidi([])).toBeUndefined()
  })

  it('any bytes are read without throwing', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 6 }), (bytes) => {
        const event = readMidi(bytes)
        if (event) expect(event.position >= 0 && event.position <= 1).toBe(true)
      }),
    )
  })
})

describe('encoders', () => {
  it.each([
    [1, 1],
    [63, 63],
    [127, -1],
    [64, -64],
  ])('two’s complement: %i is %i', (raw, steps) => {
    expect(stepsOf(raw, 'twos-complement')).toBe(steps)
  })

  it.each([
    [65, 1],
    [63, -1],
    [64, 0],
  ])('offset binary: %i is %i', (raw, steps) => {
    expect(stepsOf(raw, 'offset-binary')).toBe(steps)
  })
})

describe('learning', () => {
  const use = { kind: 'number', id: 'gain-all' } as const

  it('a control change does what it was given', () => {
    const control = { kind: 'change', channel: 1, number: 7 } as const
    expect(learntBinding(control, use, 'offset-binary')).toEqual({
      control,
      use,
      coding: 'offset-binary',
    })
  })

  it('a key given a number resets it, and a bend stands somewhere', () => {
    const key = { kind: 'note', channel: 1, number: 7 } as const
    expect(learntBinding(key, use, 'position').use).toEqual({ kind: 'reset', id: 'gain-all' })
    const bend = { kind: 'bend', channel: 1, number: 0 } as const
    expect(learntBinding(bend, use, 'offset-binary').coding).toBe('position')
  })

  it('a control does one thing', () => {
    const control = { kind: 'note', channel: 2, number: 1 } as const
    const play: MidiBinding = { control, coding: 'position', use: { kind: 'command', id: 'play' } }
    const loop: MidiBinding = { ...play, use: { kind: 'command', id: 'loop' } }
    expect(withBinding([play], loop)).toEqual([loop])
    expect(controlName(control)).toBe('note 1, channel 2')
  })
})

describe('taking over', () => {
  const near = 0.004

  /** Moves a control through places; what the number is after each. */
  const follow = (places: readonly number[], present: number): readonly number[] => {
    let taken = NOT_TAKEN
    let value = present
    return places.map((place) => {
      const next = takeOver(taken, place, value, near)
      taken = next.taken
      if (next.holds) value = place
      return value
    })
  }

  it('waits until the number is passed, from either side', () => {
    expect(follow([0.1, 0.2, 0.4, 0.6, 0.7], 0.5)).toEqual([0.5, 0.5, 0.5, 0.6, 0.7])
    expect(follow([0.9, 0.6, 0.45, 0.3], 0.5)).toEqual([0.5, 0.5, 0.45, 0.3])
  })

  it('takes over at once where it stands at the number', () => {
    expect(follow([0.502, 0.6], 0.5)).toEqual([0.502, 0.6])
  })

  it('waits again once something else has moved the number', () => {
    const held = takeOver(NOT_TAKEN, 0.5, 0.5, near)
    expect(held.holds).toBe(true)
    const later = takeOver(held.taken, 0.51, 0.9, near)
    expect(later.holds).toBe(false)
    expect(takeOver(later.taken, 0.52, 0.9, near).holds).toBe(false)
    expect(takeOver(later.taken, 0.95, 0.9, near).holds).toBe(true)
  })

  it('never moves the number further than the control went', () => {
    const places = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1 })
    fc.assert(
      fc.property(places, fc.double({ min: 0, max: 1, noNaN: true }), (path, present) => {
        const values = follow(path, present)
        for (const [i, value] of values.entries()) {
          const before = values[i - 1] ?? present
          const travel = i === 0 ? 0 : Math.abs((path[i] ?? 0) - (path[i - 1] ?? 0))
          expect(Math.abs(value - before)).toBeLessThanOrEqual(travel + near + 1e-6)
        }
      }),
    )
  })
})
