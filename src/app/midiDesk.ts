import { IDENTITY_GRADE } from '../core/colour/grade.ts'
import { IDENTITY_FRAMING } from '../core/picture/framing.ts'
import {
  learntBinding,
  type MidiBinding,
  stepsOf,
  withBinding,
} from '../core/surface/midiBinding.ts'
import { controlName, type MidiEvent, readMidi, sameControl } from '../core/surface/midiMessage.ts'
import { readNumber } from '../core/surface/moveValues.ts'
import { type SurfaceNumberId, surfaceNumber } from '../core/surface/surfaceNumber.ts'
import { NOT_TAKEN, type Taken, takeOver } from '../core/surface/takeOver.ts'
import type { AppStore } from '../store/appStore.ts'
import { type MidiState, setSurface, setSurfaceSetup } from '../store/surface.ts'
import type { RunCommand } from './gamePadDesk.ts'
import { REST_MS, type SurfaceChanges } from './surfaceChanges.ts'

/** A MIDI input as the browser's Web MIDI API gives it. */
export type MidiInput = {
  readonly name: string | null
  readonly state: string
  onmidimessage: ((event: { readonly data: Uint8Array | null }) => void) | null
}

export type MidiAccess = {
  readonly inputs: { readonly values: () => Iterable<MidiInput> }
  onstatechange: (() => void) | null
}

/** The browser as far as MIDI goes. */
export type MidiHost = {
  /** Asks the browser, which may ask the person; not there where the browser has no Web MIDI. */
  readonly request: (() => Promise<MidiAccess>) | undefined
  /** Whether it would give it without asking the person. */
  readonly isGranted: () => Promise<boolean>
}

export type MidiDesk = {
  readonly turnOn: () => Promise<void>
  readonly turnOff: () => void
}

const RESET = { grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING }

/** A pitch bend rests in its middle, so that it counts as pressed only well above it. */
const isDown = ({ control, position }: MidiEvent): boolean =>
  control.kind === 'note' ? position > 0 : position >= (control.kind === 'bend' ? 0.75 : 0.5)

/**
 * Lets MIDI control surfaces move the cue under the line and run commands. The browser is asked for
 * MIDI only when the person turns it on.
 */
export const createMidiDesk = (
  store: AppStore,
  host: MidiHost,
  changes: SurfaceChanges,
  runCommand: RunCommand,
  isBlocked: () => boolean,
): MidiDesk => {
  const taken = new Map<string, Taken>()
  /** Controls that hold something, and the command they run. */
  const held = new Map<string, string | undefined>()
  let access: MidiAccess | undefined
  let asked = 0
  let timer: ReturnType<typeof setTimeout> | undefined

  const restLater = (): void => {
    clearTimeout(timer)
    timer = setTimeout(changes.rest, REST_MS)
  }

  const tellWaiting = (name: string, isWaiting: boolean): void => {
    const { waiting } = store.getState().surface
    if (waiting.includes(name) === isWaiting) return
    const others = waiting.filter((other) => other !== name)
    setSurface(store, { waiting: isWaiting ? [...others, name] : others })
  }

  const follow = (event: MidiEvent, id: SurfaceNumberId): void => {
    const name = controlName(event.control)
    const [low, high] = surfaceNumber(id).span
    const place = low + event.position * (high - low)
    const present = changes.present(id)
    if (present === undefined || isBlocked()) {
      taken.set(name, { at: place, set: undefined })
      return
    }
    const steps = event.control.kind === 'bend' ? 2 ** 14 : 2 ** 7
    const near = (high - low) / steps / 2
    const next = takeOver(taken.get(name) ?? NOT_TAKEN, place, present, near)
    tellWaiting(name, !next.holds)
    taken.set(name, next.taken)
    if (!next.holds) return
    changes.set(id, place)
    taken.set(name, { at: place, set: changes.present(id) })
    restLater()
  }

  const letGo = (name: string): void => {
    const id = held.get(name)
    held.delete(name)
    if (id !== undefined) runCommand(id, false)
  }

  const act = (event: MidiEvent, { use, coding }: MidiBinding): void => {
    if (use.kind === 'number') {
      if (coding === 'position') follow(event, use.id)
      else if (!isBlocked()) {
        const by = stepsOf(event.raw, coding) * surfaceNumber(use.id).step
        changes.move(new Map([[use.id, by]]))
        restLater()
      }
      return
    }
    const name = controlName(event.control)
    const wasDown = held.has(name)
    if (isDown(event) === wasDown) return
    if (wasDown) {
      letGo(name)
    } else if (!isBlocked()) {
      held.set(name, use.kind === 'command' ? use.id : undefined)
      if (use.kind === 'command') runCommand(use.id, true)
      else {
        changes.set(use.id, readNumber(use.id, RESET))
        changes.rest()
      }
    }
  }

  const learn = (event: MidiEvent): boolean => {
    const { learning } = store.getState().surface
    if (learning?.of !== 'midi') return false
    if (event.control.kind === 'note' && event.raw === 0) return true
    const binding = learntBinding(event.control, learning.use, learning.coding)
    setSurfaceSetup(store, ({ midi }) => ({
      midi: { ...midi, bindings: withBinding(midi.bindings, binding) },
    }))
    const name = controlName(event.control)
    taken.delete(name)
    setSurface(store, { learning: undefined, learnt: { of: 'midi', name } })
    return true
  }

  const onMessage = ({ data }: { readonly data: Uint8Array | null }): void => {
    const event = data ? readMidi(data) : undefined
    if (!event || learn(event)) return
    const { bindings } = store.getState().preferences.surface.midi
    const binding = bindings.find(({ control }) => sameControl(control, event.control))
    if (binding) act(event, binding)
  }

  const listen = (): void => {
    const inputs = access ? [...access.inputs.values()] : []
    const present = inputs.filter(({ state }) => state === 'connected')
    for (const input of present) input.onmidimessage = onMessage
    setSurface(store, { inputs: present.map(({ name }) => name ?? 'a MIDI input without a name') })
  }

  const tell = (midi: MidiState, isOn: boolean): void => {
    setSurface(store, { midi })
    setSurfaceSetup(store, (setup) => ({ midi: { ...setup.midi, isOn } }))
  }

  const turnOff = (): void => {
    asked++
    if (access) {
      for (const input of access.inputs.values()) input.onmidimessage = null
      access.onstatechange = null
      access = undefined
    }
    for (const name of [...held.keys()]) letGo(name)
    taken.clear()
    clearTimeout(timer)
    changes.rest()
    setSurface(store, { inputs: [], waiting: [] })
    tell('off', false)
  }

  const turnOn = async (): Promise<void> => {
    if (!host.request) {
      tell('missing', false)
      return
    }
    const mine = ++asked
    setSurface(store, { midi: 'asking' })
    try {
      const given = await host.request()
      if (mine !== asked) return
      access = given
      given.onstatechange = listen
      listen()
      tell('on', true)
    } catch {
      // Whatever the browser calls it: there is no MIDI, and the screen says what to do.
      if (mine === asked) tell('refused', false)
    }
  }
  return { turnOn, turnOff }
}

/** Turns MIDI on again where it was on and the browser gives it without asking. */
export const resumeMidi = async (
  store: AppStore,
  { isGranted }: MidiHost,
  desk: MidiDesk,
): Promise<void> => {
  if (store.getState().preferences.surface.midi.isOn && (await isGranted())) await desk.turnOn()
}
