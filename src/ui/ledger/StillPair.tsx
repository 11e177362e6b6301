import { memo, useCallback, useEffect, useSyncExternalStore } from 'react'
import { type Grade, IDENTITY_GRADE } from '../../core/colour/grade.ts'
import type { Cue } from '../../core/job/job.ts'
import { valuesAt } from '../../core/job/valuesAt.ts'
import { type Framing, IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import type { Still } from '../../core/picture/still.ts'
import type { Frame } from '../../core/time/frame.ts'
import { stillPixels } from '../../render/stillPixels.ts'
import { useApp } from '../appContext.ts'
import { useCanvas } from '../parts/useCanvas.ts'

/** The width a still is drawn at; its height follows from the picture's shape. */
const STILL_WIDTH = 80

export const stillHeightOf = (aspect: number): number => Math.round(STILL_WIDTH / aspect)

export type StillPairProps = {
  readonly cue: Cue
  readonly previous: Cue | undefined
  readonly frame: Frame
  readonly aspect: number
}

/** The still of a frame; until it is there, the nearest one of its cue. */
const useStill = (frame: Frame): Still | undefined => {
  const { stills } = useApp().services
  const subscribe = useCallback(
    (redraw: () => void) =>
      stills.subscribe(() => {
        if (!stills.get(frame)) stills.request(frame)
        redraw()
      }),
    [stills, frame],
  )
  useEffect(() => {
    stills.request(frame)
  }, [stills, frame])
  return useSyncExternalStore(subscribe, () => stills.get(frame) ?? stills.nearest(frame)?.still)
}

/** A frame of a cue as scanned and as graded, side by side. */
export const StillPair = memo(({ cue, previous, frame, aspect }: StillPairProps) => {
  const still = useStill(frame)
  const height = stillHeightOf(aspect)
  const { grade, framing } = valuesAt(cue, previous, frame)
  return (
    <>
      <StillCanvas
        still={still}
        height={height}
        grade={IDENTITY_GRADE}
        framing={IDENTITY_FRAMING}
      />
      <StillCanvas still={still} height={height} grade={grade} framing={framing} />
    </>
  )
})

type GradedStillProps = {
  readonly frame: Frame
  readonly aspect: number
  readonly width: number
  readonly grade: Grade
  readonly framing: Framing
}

/** A frame graded and framed by given values, as wide as is wanted. */
export const GradedStill = ({ frame, aspect, width, grade, framing }: GradedStillProps) => {
  const still = useStill(frame)
  return (
    <StillCanvas
      still={still}
      width={width}
      height={Math.round(width / aspect)}
      grade={grade}
      framing={framing}
    />
  )
}

type StillCanvasProps = {
  readonly width?: number
  readonly still: Still | undefined
  readonly height: number
  readonly grade: Grade
  readonly framing: Framing
}

const StillCanvas = memo((props: StillCanvasProps) => {
  const { still, width = STILL_WIDTH, height, grade, framing } = props
  const canvas = useCanvas(width, height, (context) => {
    if (still) drawStill(context, stillPixels(still, grade, framing), still)
  })
  return <canvas ref={canvas} className="still" style={{ width, height }} />
})

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
