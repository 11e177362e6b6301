import { useEffect } from 'react'
import { useApp } from '../appContext.ts'
import { commandForKey } from './keys.ts'
import { COMMANDS } from './registry.ts'

const TYPED_IN = 'input:not([role="spinbutton"]), textarea, select, [contenteditable]'

/** What a number is typed with; letters are not, so commands keep their keys there. */
const OF_A_NUMBER = /^[\d.,+\-−%×]$/u

/** Keys that a number field keeps for itself: those of a number, and those that edit or move. */
const isKeptByNumber = (event: KeyboardEvent): boolean =>
  event.target instanceof Element &&
  event.target.matches('[role="spinbutton"]') &&
  !event.ctrlKey &&
  !event.metaKey &&
  !event.key.startsWith('Page') &&
  (event.key.length > 1 || OF_A_NUMBER.test(event.key))

/** Chords that mean something to the field they are typed in. */
const isEditingChord = (event: KeyboardEvent): boolean =>
  event.target instanceof Element &&
  event.target.matches(TYPED_IN) &&
  !((event.ctrlKey || event.metaKey) && /^[sofe]$/iu.test(event.key))

const isOnButton = (event: KeyboardEvent): boolean =>
  event.key === ' ' &&
  event.target instanceof Element &&
  event.target.closest('button, [role="button"], [role="checkbox"], [role="menuitem"]') !== null

/** Runs commands by their keys while the screen is up and no dialog is open. */
export const useCommandKeys = (): void => {
  const app = useApp()
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || isKeptByNumber(event) || isEditingChord(event)) return
      if (
        isOnButton(event) ||
        document.querySelector('[role="dialog"], [role="alertdialog"]') !== null
      )
        return
      const command = commandForKey(COMMANDS, event, app.store.getState().preferences)
      if (!command) return
      event.preventDefault()
      if (command.isPossible(app.store.getState())) command.run(app)
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [app])
}
