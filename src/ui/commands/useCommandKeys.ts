import { useEffect } from 'react'
import type { AppState } from '../../store/state.ts'
import { useApp } from '../appContext.ts'
import type { Command } from './command.ts'
import { startHold } from './holds.ts'
import { commandWithKey, keyName } from './keys.ts'
import { COMMANDS } from './registry.ts'

const SWITCHES = 'input:is([type="checkbox"], [type="radio"], [type="range"], [type="color"])'
const TYPED_IN = `input:not([role="spinbutton"]):not(${SWITCHES}), textarea, select, [contenteditable]`
const PRESSED = `button, summary, [role="button"], [role="checkbox"], [role="menuitem"], ${SWITCHES}`

const isOn = (event: KeyboardEvent, selector: string): boolean =>
  event.target instanceof Element && event.target.closest(selector) !== null

const hasMod = (event: KeyboardEvent): boolean => event.ctrlKey || event.metaKey

const isFunctionKey = (event: KeyboardEvent): boolean => /^F\d+$/u.test(event.key)

/** What a number is typed with; letters are not, so commands keep their keys there. */
const OF_A_NUMBER = /^[\d.,+\-−%×]$/u

/** Keys that a number field keeps for itself: those of a number, and those that edit or move. */
const isKeptByNumber = (event: KeyboardEvent): boolean => {
  if (!isOn(event, '[role="spinbutton"]')) return false
  if (hasMod(event)) return /^[acvx]$/iu.test(event.key)
  if (event.key.startsWith('Page') || isFunctionKey(event)) return false
  return event.key.length > 1 || OF_A_NUMBER.test(event.key)
}

/** Keys that mean something to a field of text: all but chords that do not edit. */
const isKeptByText = (event: KeyboardEvent): boolean =>
  isOn(event, TYPED_IN) &&
  !isFunctionKey(event) &&
  !(hasMod(event) && event.key.length === 1 && !/^[acvxyz]$/iu.test(event.key))

/** Keys that press, tick or move the control they are pressed on. */
const isKeptByControl = (event: KeyboardEvent): boolean =>
  (event.key === ' ' && isOn(event, PRESSED)) ||
  (/^(?:Arrow|Page|Home|End)/u.test(event.key) && isOn(event, SWITCHES))

/** What a key does where somebody agrees who never saw the program: nothing that they do not see. */
const AGREEING: readonly Command['group'][] = ['Play', 'Agree', 'Job', 'Settings']

const mayRun = ({ group, id }: Command, { step }: AppState): boolean =>
  step !== 'agree' || AGREEING.includes(group) || id.startsWith('agreement-')

const isUnderDialog = (): boolean =>
  document.querySelector('[role="dialog"], [role="alertdialog"]') !== null

/**
 * Runs commands by their keys while the screen is up and no dialog is open. A command that holds
 * is let go of with its key, or when the window is left.
 */
export const useCommandKeys = (): void => {
  const app = useApp()
  useEffect(() => {
    /** What is held, by the place of its key: letting go of Shift first changes the key's name. */
    const held = new Map<string, () => void>()
    const letGo = (code: string): void => {
      held.get(code)?.()
      held.delete(code)
    }
    const letAllGo = (): void => {
      for (const code of [...held.keys()]) letGo(code)
    }
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.isComposing) return
      if (isKeptByNumber(event) || isKeptByText(event) || isKeptByControl(event)) return
      if (isUnderDialog()) return
      const state = app.store.getState()
      const command = commandWithKey(COMMANDS, keyName(event), state.preferences)
      if (!command || !mayRun(command, state)) return
      event.preventDefault()
      if (!command.release) {
        if (command.isPossible(app.store.getState())) command.run(app)
      } else if (!event.repeat && !held.has(event.code)) {
        const release = startHold(app, command)
        if (release) held.set(event.code, release)
      }
    }
    const onKeyUp = (event: KeyboardEvent): void => {
      letGo(event.code)
      // A Mac tells nothing of keys let go of while ⌘ is down.
      if (event.key === 'Meta') letAllGo()
    }
    window.addEventListener('keydown', onKeyDown)
    window.addEventListener('keyup', onKeyUp)
    window.addEventListener('blur', letAllGo)
    return () => {
      letAllGo()
      window.removeEventListener('keydown', onKeyDown)
      window.removeEventListener('keyup', onKeyUp)
      window.removeEventListener('blur', letAllGo)
    }
  }, [app])
}
