import type { AppStore } from '../../store/appStore.ts'
import { setSheet } from '../../store/session.ts'
import type { Sheet } from '../../store/state.ts'

/** Takes a sheet out and puts the focus on its first control, from where Tab goes on. */
export const openSheet = (store: AppStore, sheet: Sheet): void => {
  setSheet(store, sheet)
  requestAnimationFrame(() =>
    document.querySelector<HTMLElement>('.sheet :is(button, input):not(:disabled)')?.focus(),
  )
}
