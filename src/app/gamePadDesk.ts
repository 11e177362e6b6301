import { buttonName, STICKS } from '../core/surface/padControls.ts'
import { activeUse, withButtonUse, withStickUse } from '../core/surface/padMapping.ts'
import { isSecondUse, padSpeeds } from '../core/surface/padMoves.ts'
import {
  isPressed,
  type PadReading,
  type PadSnapshot,
  readPad,
} from '../core/surface/padReading.ts'
import type { AppStore } from '../store/appStore.ts'
import { setSurface, setSurfaceSetup, stickName } from '../store/surface.ts'
import { REST_MS, type SurfaceChanges } from './surfaceChanges.ts'

/** A pad as the browser's Gamepad API tells of it. */
export type Pad = PadSnapshot & {
  readonly id: string
  readonly mapping: string
  readonly connected: boolean
  readonly timestamp: number
}

/** The browser as far as game pads go. */
export type PadHost = {
  readonly getGamepads: () => readonly (Pad | null)[]
  readonly now: () => number
  readonly requestFrame: (turn: () => void) => void
  /** Runs `onConnected` whenever a pad comes. */
  readonly listen: (onConnected: () => void) => void
}

/** Runs a command of the program as a key would, or lets it go. */
export type RunCommand = (id: string, isDown: boolean) => void

/** No step is longer than this, whatever held the browser up. */
const LONGEST_STEP_MS = 200

/** As far as a stick is pushed to be chosen. */
const CHOSEN_FROM = 0.7

const hundredths = (value: number): number => Math.round(value * 100) / 100

/** A reading as the screen shows it: without the tremble of a stick at rest. */
const shown = ({ sticks, buttons }: PadReading): PadReading => ({
  sticks: {
    left: { x: hundredths(sticks.left.x), y: hundredths(sticks.left.y) },
    right: { x: hundredths(sticks.right.x), y: hundredths(sticks.right.y) },
  },
  buttons: buttons.map(hundredths),
})

/** The pad that was moved last. */
const padInUse = (pads: readonly (Pad | null)[]): Pad | undefined =>
  pads
    .filter((pad) => pad?.connected === true)
    .reduce<Pad | undefined>(
      (latest, pad) => (pad && pad.timestamp > (latest?.timestamp ?? -1) ? pad : latest),
      undefined,
    )

/**
 * Lets a game pad move the cue under the line, at a speed that follows its controls, and run
 * commands. Looked at once a screen frame while a pad is there, and not at all otherwise.
 * `isBlocked` holds while something else has the person's attention.
 */
export const startGamePadDesk = (
  store: AppStore,
  host: PadHost,
  changes: SurfaceChanges,
  runCommand: RunCommand,
  isBlocked: () => boolean,
): void => {
  let isRunning = false
  let last: number | undefined
  let movedAt = 0
  let before: PadReading = { sticks: { left: { x: 0, y: 0 }, right: { x: 0, y: 0 } }, buttons: [] }
  const held = new Map<number, string>()

  const tell = (pad: Pad, reading: PadReading): void => {
    const { surface } = store.getState()
    const isStandard = pad.mapping === 'standard'
    if (surface.pad?.name !== pad.id || surface.pad.isStandard !== isStandard)
      setSurface(store, { pad: { name: pad.id, isStandard } })
    if (!surface.isWatched) return
    const next = shown(reading)
    if (JSON.stringify(next) !== JSON.stringify(surface.reading))
      setSurface(store, { reading: next })
  }

  const tellLearnt = (name: string): void =>
    setSurface(store, { learning: undefined, learnt: { of: 'pad', name } })

  /** Whether the button was given what waited for one; its second use where that is held. */
  const learnButton = (index: number, reading: PadReading): boolean => {
    const { surface, preferences } = store.getState()
    const { learning } = surface
    if (learning?.of !== 'button') return false
    const { use } = learning
    const isHold = use.kind === 'fine' || use.kind === 'second'
    const isSecond = !isHold && isSecondUse(reading, preferences.surface)
    setSurfaceSetup(store, ({ pad }) => ({
      pad: withButtonUse(pad, index, isSecond ? 'second' : 'first', use),
    }))
    tellLearnt(buttonName(index))
    return true
  }

  const learnStick = (reading: PadReading): void => {
    const { surface, preferences } = store.getState()
    const { learning } = surface
    if (learning?.of !== 'stick') return
    const { use } = learning
    const stick = STICKS.find(
      (name) => Math.hypot(reading.sticks[name].x, reading.sticks[name].y) >= CHOSEN_FROM,
    )
    if (!stick) return
    const which = isSecondUse(reading, preferences.surface) ? 'second' : 'first'
    setSurfaceSetup(store, ({ pad }) => ({ pad: withStickUse(pad, stick, which, use) }))
    tellLearnt(stickName(stick))
  }

  const press = (index: number, reading: PadReading): void => {
    if (learnButton(index, reading) || isBlocked()) return
    const setup = store.getState().preferences.surface
    const uses = setup.pad.buttons[index]
    const use = uses && activeUse(uses, isSecondUse(reading, setup))
    if (use?.kind !== 'command') return
    held.set(index, use.id)
    runCommand(use.id, true)
  }

  const letGo = (index: number): void => {
    const id = held.get(index)
    if (id === undefined) return
    held.delete(index)
    runCommand(id, false)
  }

  const move = (reading: PadReading, now: number, step: number): void => {
    const speeds = padSpeeds(reading, store.getState().preferences.surface)
    if (speeds.size > 0 && !isBlocked()) {
      movedAt = now
      changes.move(new Map([...speeds].map(([id, speed]) => [id, (speed * step) / 1000])))
    } else if (now - movedAt >= REST_MS) changes.rest()
  }

  const stop = (): void => {
    isRunning = false
    last = undefined
    for (const index of [...held.keys()]) letGo(index)
    changes.rest()
    before = { ...before, buttons: [] }
    setSurface(store, { pad: undefined, reading: undefined })
  }

  const turn = (): void => {
    const pad = padInUse(host.getGamepads())
    if (!pad) {
      stop()
      return
    }
    const now = host.now()
    const step = Math.min(LONGEST_STEP_MS, now - (last ?? now))
    last = now
    const reading = readPad(pad)
    for (const index of reading.buttons.keys()) {
      if (isPressed(reading, index) && !isPressed(before, index)) press(index, reading)
      if (!isPressed(reading, index) && isPressed(before, index)) letGo(index)
    }
    learnStick(reading)
    before = reading
    move(reading, now, step)
    tell(pad, reading)
    host.requestFrame(turn)
  }

  host.listen(() => {
    if (isRunning) return
    isRunning = true
    host.requestFrame(turn)
  })
}
