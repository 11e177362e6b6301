import { type ReactNode, useEffect, useRef } from 'react'
import { useApp } from '../appContext.ts'
import { useElementSize } from '../parts/useElementSize.ts'
import { useFrameLoop } from '../parts/useFrameLoop.ts'

export type InstrumentCanvasProps = {
  readonly label: string
  readonly draw: (context: CanvasRenderingContext2D, width: number, height: number) => void
  /** Words over the picture. */
  readonly children?: ReactNode
}

/** A canvas that fills its place and is drawn again at each new reading. */
export const InstrumentCanvas = ({ label, draw, children }: InstrumentCanvasProps) => {
  const { services } = useApp()
  const place = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const { width, height } = useElementSize(place)
  const redraw = useFrameLoop(() => {
    const context = canvas.current?.getContext('2d')
    if (!canvas.current || !context || width === 0) return
    // Text and controls may be shown larger than in CSS pixels: drawn sharp all the same.
    const enlarged = canvas.current.getBoundingClientRect().width / width || 1
    const ratio = (window.devicePixelRatio || 1) * enlarged
    const pixelWidth = Math.round(width * ratio)
    const pixelHeight = Math.round(height * ratio)
    if (canvas.current.width !== pixelWidth) canvas.current.width = pixelWidth
    if (canvas.current.height !== pixelHeight) canvas.current.height = pixelHeight
    context.setTransform(ratio, 0, 0, ratio, 0, 0)
    draw(context, width, height)
  })
  useEffect(() => services.readings.subscribe(redraw), [services, redraw])
  useEffect(redraw)
  return (
    <div className="instrument-place" ref={place}>
      <canvas ref={canvas} role="img" aria-label={label} style={{ width, height }} />
      {children}
    </div>
  )
}
