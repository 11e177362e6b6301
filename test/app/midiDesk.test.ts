import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { createMidiDesk, type MidiInput, resumeMidi } from '../../src/app/midiDesk.ts'
import { createSurfaceChanges } from '../../src/app/surfaceChanges.ts'
import { tintOf } from '../../src/core/colour/gradeViews.ts'
import type { Cue } from '../../src/core/job/job.ts'
import type { MidiBinding, MidiCoding, MidiUse } from '../../src/core/surface/midiBinding.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob, undo } from '../../src/store/document.ts'
import { currentCue } from '../../src/store/queries.ts'
import { movePlayhead } from '../../src/store/session.ts'
import { setSurface, setSurfaceSetup } from '../../src/store/surface.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

beforeEach(() => {
  vi.useFakeTimers()
})

afterEach(() => {
  vi.useRealTimers()
})

type Given = 'given' | 'refused' | 'missing'

/** A store with a job, and a browser with one MIDI input that the test plays on. */
const setUp = (given: Given = 'given', isGranted = false) => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  store.setState({ reelId: REEL_ID })
  const inputs: MidiInput[] = [{ name: 'faders', state: 'connected', onmidimessage: null }]
  const access = {
    inputs: { values: () => inputs },
    onstatechange: null as (() => void) | null,
  }
  const ran: string[] = []
  let asked = 0
  let isBlocked = false
  const host = {
    request:
      given === 'missing'
        ? undefined
        : async () => {
            asked++
            if (given === 'refused') throw new DOMException('no', 'NotAllowedError')
            return access
          },
    isGranted: async () => isGranted,
  }
  const desk = createMidiDesk(
    store,
    host,
    createSurfaceChanges(store),
    (id, isDown) => ran.push(`${id} ${isDown ? 'down' : 'up'}`),
    () => isBlocked,
  )
  return {
    store,
    host,
    desk,
    access,
    inputs,
    ran,
    asked: () => asked,
    block: (value: boolean) => {
      isBlocked = value
    },
    play: (...bytes: readonly number[]) => {
      for (const input of inputs) input.onmidimessage?.({ data: Uint8Array.from(bytes) })
    },
    bind: (binding: MidiBinding) =>
      setSurfaceSetup(store, ({ midi }) => ({
        midi: { ...midi, bindings: [...midi.bindings, binding] },
      })),
    learn: (use: MidiUse, coding: MidiCoding = 'position') =>
      setSurface(store, { learning: { of: 'midi', use, coding } }),
    bindings: () => store.getState().preferences.surface.midi.bindings,
    cue: (): Cue => {
      const cue = currentCue(store.getState())
      if (!cue) throw new Error('no cue')
      return cue
    },
    steps: () => store.getState().history?.past.map(({ label }) => label) ?? [],
  }
}

const change = (number: number) => ({ kind: 'change', channel: 1, number }) as const
const GAIN: MidiUse = { kind: 'number', id: 'gain-all' }
const FADER: MidiBinding = { control: change(7), coding: 'position', use: GAIN }

describe('turning MIDI on', () => {
  it('asks the browser only then, and hears its inputs', async () => {
    const { store, desk, asked } = setUp()
    expect(asked()).toBe(0)
    await desk.turnOn()
    expect(asked()).toBe(1)
    expect(store.getState().surface).toMatchObject({ midi: 'on', inputs: ['faders'] })
    expect(store.getState().preferences.surface.midi.isOn).toBe(true)
  })

  it('says when the browser refuses, and when it has none', async () => {
    const refused = setUp('refused')
    await refused.desk.turnOn()
    expect(refused.store.getState().surface.midi).toBe('refused')
    expect(refused.store.getState().preferences.surface.midi.isOn).toBe(false)
    const missing = setUp('missing')
    await missing.desk.turnOn()
    expect(missing.store.getState().surface.midi).toBe('missing')
  })

  it('hears an input that comes later, and names only those that are there', async () => {
    const { store, desk, access, inputs, learn, play, bindings } = setUp()
    await desk.turnOn()
    inputs.push({ name: 'knobs', state: 'connected', onmidimessage: null })
    inputs[0] = { name: 'faders', state: 'disconnected', onmidimessage: null }
    access.onstatechange?.()
    expect(store.getState().surface.inputs).toEqual(['knobs'])
    learn(GAIN)
    play(0xb0, 7, 1)
    expect(bindings()).toHaveLength(1)
  })

  it('hears nothing once it is off, even where the browser answers late', async () => {
    const { store, desk, play, learn, bindings } = setUp()
    const on = desk.turnOn()
    desk.turnOff()
    await on
    expect(store.getState().surface.midi).toBe('off')
    await desk.turnOn()
    desk.turnOff()
    learn(GAIN)
    play(0xb0, 7, 1)
    expect(bindings()).toEqual([])
  })

  it('comes back by itself only where it was on and needs no asking', async () => {
    const granted = setUp('given', true)
    await resumeMidi(granted.store, granted.host, granted.desk)
    expect(granted.asked()).toBe(0)
    setSurfaceSetup(granted.store, ({ midi }) => ({ midi: { ...midi, isOn: true } }))
    await resumeMidi(granted.store, granted.host, granted.desk)
    expect(granted.store.getState().surface.midi).toBe('on')
    const unasked = setUp('given', false)
    setSurfaceSetup(unasked.store, ({ midi }) => ({ midi: { ...midi, isOn: true } }))
    await resumeMidi(unasked.store, unasked.host, unasked.desk)
    expect(unasked.asked()).toBe(0)
  })
})

describe('learning', () => {
  it('a control change, a key and a bend', async () => {
    const { store, desk, learn, play, bindings } = setUp()
    await desk.turnOn()
    learn(GAIN, 'offset-binary')
    play(0xb3, 20, 65)
    learn({ kind: 'command', id: 'play' })
    play(0x80, 40, 0)
    expect(bindings()).toHaveLength(1)
    play(0x90, 40, 90)
    learn({ kind: 'number', id: 'saturation' })
    play(0xe1, 0, 80)
    expect(bindings()).toEqual([
      { control: { kind: 'change', channel: 4, number: 20 }, coding: 'offset-binary', use: GAIN },
      {
        control: { kind: 'note', channel: 1, number: 40 },
        coding: 'position',
        use: { kind: 'command', id: 'play' },
      },
      {
        control: { kind: 'bend', channel: 2, number: 0 },
        coding: 'position',
        use: { kind: 'number', id: 'saturation' },
      },
    ])
    expect(store.getState().surface.learnt?.name).toBe('pitch bend, channel 2')
  })
})

describe('faders', () => {
  it('take over where they pass the number, without a leap', async () => {
    const { store, desk, bind, play, cue } = setUp()
    await desk.turnOn()
    bind(FADER)
    play(0xb0, 7, 20)
    play(0xb0, 7, 40)
    expect(cue().grade.gain).toEqual([1, 1, 1])
    expect(store.getState().surface.waiting).toEqual(['control change 7, channel 1'])
    play(0xb0, 7, 64)
    expect(store.getState().surface.waiting).toEqual([])
    play(0xb0, 7, 127)
    expect(cue().grade.gain[0]).toBeCloseTo(1.5, 4)
  })

  it('wait again on a cue whose number is another', async () => {
    const { store, desk, bind, play, cue } = setUp()
    await desk.turnOn()
    bind(FADER)
    play(0xb0, 7, 64)
    play(0xb0, 7, 96)
    const before = cue().grade.gain[0]
    expect(before).toBeGreaterThan(1.2)
    movePlayhead(store, 150)
    play(0xb0, 7, 97)
    expect(cue().grade.gain).toEqual([1, 1, 1])
    movePlayhead(store, 50)
    expect(cue().grade.gain[0]).toBe(before)
  })

  it('wait again after an undo', async () => {
    const { store, desk, bind, play, cue } = setUp()
    await desk.turnOn()
    bind(FADER)
    play(0xb0, 7, 64)
    play(0xb0, 7, 96)
    vi.advanceTimersByTime(400)
    undo(store)
    play(0xb0, 7, 98)
    expect(cue().grade.gain).toEqual([1, 1, 1])
  })

  it('one movement is one undo step', async () => {
    const { store, desk, bind, play, steps } = setUp()
    await desk.turnOn()
    bind(FADER)
    for (const value of [64, 70, 80]) {
      play(0xb0, 7, value)
      vi.advanceTimersByTime(200)
    }
    expect(store.getState().gesture).toBeDefined()
    vi.advanceTimersByTime(300)
    expect(store.getState().gesture).toBeUndefined()
    play(0xb0, 7, 90)
    vi.advanceTimersByTime(400)
    expect(steps()).toEqual(['gain all', 'gain all'])
  })

  it('a bend moves a number finely', async () => {
    const { desk, bind, play, cue } = setUp()
    await desk.turnOn()
    bind({ ...FADER, control: { kind: 'bend', channel: 1, number: 0 } })
    play(0xe0, 0, 64)
    play(0xe0, 16, 64)
    expect(cue().grade.gain[0]).toBeCloseTo(1 + 16 / (2 * 8191), 4)
  })
})

describe('encoders and keys', () => {
  it('encoders add steps in both codings', async () => {
    const { desk, bind, play, cue } = setUp()
    await desk.turnOn()
    bind({ ...FADER, coding: 'twos-complement' })
    bind({
      control: change(8),
      coding: 'offset-binary',
      use: { kind: 'number', id: 'lift-cb' },
    })
    play(0xb0, 7, 3)
    expect(cue().grade.gain[0]).toBeCloseTo(1.015, 6)
    play(0xb0, 7, 127)
    expect(cue().grade.gain[0]).toBeCloseTo(1.01, 6)
    play(0xb0, 8, 60)
    expect(tintOf(cue().grade.lift).cb).toBeCloseTo(-0.004, 6)
  })

  it('a key runs a command and lets it go; another resets a number', async () => {
    const { desk, bind, play, ran, cue } = setUp()
    await desk.turnOn()
    bind({
      control: { kind: 'note', channel: 1, number: 1 },
      coding: 'position',
      use: { kind: 'command', id: 'scanned' },
    })
    bind({
      control: { kind: 'note', channel: 1, number: 2 },
      coding: 'position',
      use: { kind: 'reset', id: 'gain-all' },
    })
    bind({ ...FADER, coding: 'twos-complement' })
    play(0x90, 1, 64)
    play(0x90, 1, 64)
    play(0x80, 1, 0)
    expect(ran).toEqual(['scanned down', 'scanned up'])
    play(0xb0, 7, 10)
    expect(cue().grade.gain[0]).toBeGreaterThan(1.04)
    play(0x90, 2, 64)
    expect(cue().grade.gain).toEqual([1, 1, 1])
  })

  it('nothing acts while a dialog is open; what was held is let go when MIDI is turned off', async () => {
    const { desk, bind, play, ran, steps, block } = setUp()
    await desk.turnOn()
    bind({
      control: { kind: 'note', channel: 1, number: 1 },
      coding: 'position',
      use: { kind: 'command', id: 'scanned' },
    })
    bind({ ...FADER, coding: 'twos-complement' })
    block(true)
    play(0x90, 1, 64)
    play(0x80, 1, 0)
    play(0xb0, 7, 3)
    expect(ran).toEqual([])
    expect(steps()).toEqual([])
    block(false)
    play(0x90, 1, 64)
    desk.turnOff()
    expect(ran).toEqual(['scanned down', 'scanned up'])
  })
})
