import { useEffect, useReducer } from 'react'
import { IDENTITY_GRADE } from '../../core/colour/grade.ts'
import type { Cue } from '../../core/job/job.ts'
import { IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import type { Frame } from '../../core/time/frame.ts'
import { stillPixels } from '../../render/stillPixels.ts'
import { useApp } from '../appContext.ts'
import { useCanvas } from '../parts/useCanvas.ts'

/** The width a still is drawn at; its height follows from the picture's shape. */
export const STILL_WIDTH = 80

/** A cue's picture as scanned and as graded, side by side. */
export const StillPair = ({ cue, frame, aspect }: { cue: Cue; frame: Frame; aspect: number }) => {
  const { stills } = useApp().services
  const [, redraw] = useReducer((count: number) => count + 1, 0)
  const still = stills.get(frame)
  useEffect(() => {
    const fetchStill = () => {
      if (stills.get(frame)) redraw()
      else stills.request(frame)
    }
    fetchStill()
    return stills.subscribe(fetchStill)
  }, [stills, frame])
  const height = Math.round(STILL_WIDTH / aspect)
  const scanned = useCanvas(STILL_WIDTH, height, (context) => {
    if (still) drawStill(context, stillPixels(still, IDENTITY_GRADE, IDENTITY_FRAMING), still)
  })
  const graded = useCanvas(STILL_WIDTH, height, (context) => {
    if (still) drawStill(context, stillPixels(still, cue.grade, cue.framing), still)
  })
  const style = { width: STILL_WIDTH, height }
  return (
    <>
      <canvas ref={scanned} className="still" style={style} />
      <canvas ref={graded} className="still" style={style} />
    </>
  )
}

const drawStill = (
  context: CanvasRenderingContext2D,
  pixels: Uint8ClampedArray<ArrayBuffer>,
  { width, height }: { width: number; height: number },
): void => {
  const { canvas } = context
  const small = new OffscreenCanvas(width, height)
  small.getContext('2d')?.putImageData(new ImageData(pixels, width, height), 0, 0)
  context.setTransform(1, 0, 0, 1, 0, 0)
  context.imageSmoothingQuality = 'high'
  context.drawImage(small, 0, 0, canvas.width, canvas.height)
}
