import { type RefObject, useEffect, useRef } from 'react'

/**
 * A 2D canvas of `width`×`height` CSS pixels at the screen's own resolution; `draw` runs after
 * every render, in CSS pixels.
 */
export const useCanvas = (
  width: number,
  height: number,
  draw: (context: CanvasRenderingContext2D) => void,
): RefObject<HTMLCanvasElement | null> => {
  const ref = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const canvas = ref.current
    const context = canvas?.getContext('2d')
    if (!canvas || !context) return
    const ratio = (window.devicePixelRatio || 1) * (canvas.currentCSSZoom ?? 1)
    canvas.width = Math.max(1, Math.round(width * ratio))
    canvas.height = Math.max(1, Math.round(height * ratio))
    context.setTransform(ratio, 0, 0, ratio, 0, 0)
    draw(context)
  })
  return ref
}
