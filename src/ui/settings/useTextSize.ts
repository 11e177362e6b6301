import { useEffect } from 'react'
import { useAppState } from '../appContext.ts'

/** Makes text and controls as large as was chosen. */
export const useTextSize = (): void => {
  const textSize = useAppState((state) => state.preferences.textSize)
  useEffect(() => {
    document.documentElement.style.zoom = textSize === 100 ? '' : `${textSize}%`
  }, [textSize])
}
