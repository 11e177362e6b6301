import { useEffect } from 'react'
import { useAppState } from '../appContext.ts'

/** Once a job is on screen its list has the keys, unless a dialog is open over it. */
export const useFocusLedger = (): void => {
  const key = useAppState((state) => state.shelfKey)
  useEffect(() => {
    if (key === undefined) return
    const timer = setTimeout(() => {
      if (document.querySelector('[role="dialog"], [role="alertdialog"]')) return
      document.querySelector<HTMLElement>('[role="grid"]')?.focus({ preventScroll: true })
    })
    return () => clearTimeout(timer)
  }, [key])
}
