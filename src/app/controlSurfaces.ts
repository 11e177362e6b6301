import type { AppStore } from '../store/appStore.ts'
import { COMMANDS } from '../ui/commands/registry.ts'
import type { Services } from '../ui/services.ts'
import { type RunCommand, startGamePadDesk } from './gamePadDesk.ts'
import {
  createMidiDesk,
  type MidiAccess,
  type MidiDesk,
  type MidiHost,
  resumeMidi,
} from './midiDesk.ts'
import { createSurfaceChanges } from './surfaceChanges.ts'
import { tellError } from './tellError.ts'

/** Web MIDI asks for a permission; where it cannot be looked up, it is asked for when wanted. */
const isMidiGranted = async (): Promise<boolean> => {
  try {
    const { state } = await navigator.permissions.query({ name: 'midi' as PermissionName })
    return state === 'granted'
  } catch {
    return false
  }
}

const midiHost = (): MidiHost => ({
  request:
    'requestMIDIAccess' in navigator
      ? // The browser's own handlers are given more than is used here.
        async () => (await navigator.requestMIDIAccess({ sysex: false })) as unknown as MidiAccess
      : undefined,
  isGranted: isMidiGranted,
})

/** Whether the numbers of the cue are out of sight, or something else has the keys as well. */
const isElsewhere = (store: AppStore): boolean =>
  store.getState().step !== 'rehearse' ||
  document.querySelector('[role="dialog"], [role="alertdialog"]') !== null

/** Game pad and MIDI control surfaces of this computer. */
export const startControlSurfaces = (store: AppStore, services: () => Services): MidiDesk => {
  const isBlocked = () => isElsewhere(store)
  const runCommand: RunCommand = (id, isDown) => {
    const command = COMMANDS.find((candidate) => candidate.id === id)
    const app = { store, services: services() }
    if (!isDown) command?.release?.(app)
    else if (command?.isPossible(store.getState())) command.run(app)
  }
  startGamePadDesk(
    store,
    {
      getGamepads: () => navigator.getGamepads(),
      now: () => performance.now(),
      requestFrame: (turn) => requestAnimationFrame(turn),
      listen: (onConnected) => window.addEventListener('gamepadconnected', onConnected),
    },
    createSurfaceChanges(store),
    runCommand,
    // A page that is not in front may be told of a stick as it stood when it left.
    () => isBlocked() || !document.hasFocus(),
  )
  const host = midiHost()
  const midi = createMidiDesk(store, host, createSurfaceChanges(store), runCommand, isBlocked)
  resumeMidi(store, host, midi).catch((error) => tellError(store, error))
  return midi
}
