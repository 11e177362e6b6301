import type { App } from '../appContext.ts'
import type { Command } from './command.ts'

/**
 * Runs a command that holds. What comes back lets go of it, once however often it is called;
 * undefined where the command cannot be run now.
 */
export const startHold = (app: App, command: Command): (() => void) | undefined => {
  if (!command.isPossible(app.store.getState())) return undefined
  command.run(app)
  let isHeld = true
  return () => {
    if (!isHeld) return
    isHeld = false
    command.release?.(app)
  }
}

/**
 * Runs a command by its name, where nothing is there to be held: one that holds is let go of at
 * the next press of a key or button, or when the window is left.
 */
export const runByName = (app: App, command: Command): void => {
  if (!command.release) {
    if (command.isPossible(app.store.getState())) command.run(app)
    return
  }
  const release = startHold(app, command)
  if (!release) return
  const until = new AbortController()
  const letGo = () => {
    until.abort()
    release()
  }
  for (const kind of ['keydown', 'pointerdown', 'blur'])
    window.addEventListener(kind, letGo, { signal: until.signal, capture: true })
}
