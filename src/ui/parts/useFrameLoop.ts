import { useCallback, useEffect, useRef } from 'react'

/** Runs `draw` at most once a screen frame, however often it is asked for. */
export const useFrameLoop = (draw: () => void): (() => void) => {
  const latest = useRef(draw)
  const pending = useRef(0)
  useEffect(() => {
    latest.current = draw
  })
  useEffect(() => () => cancelAnimationFrame(pending.current), [])
  return useCallback(() => {
    if (pending.current !== 0) return
    pending.current = requestAnimationFrame(() => {
      pending.current = 0
      latest.current()
    })
  }, [])
}
