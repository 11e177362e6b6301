import { type ReactNode, useEffect, useRef } from 'react'
import { type TileLayout, tileLayout } from '../../core/picture/tileLayout.ts'
import type { ScreenPreview } from '../../render/createWorkerPreview.ts'
import { arrangementOf, picturesShown } from '../../store/compared.ts'
import { reelOf } from '../../store/queries.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { type Size, useElementSize } from '../parts/useElementSize.ts'
import { useFrameLoop } from '../parts/useFrameLoop.ts'
import { FramingOverlay } from './FramingOverlay.tsx'
import { PicturePoints } from './PicturePoints.tsx'
import { PictureWipe } from './PictureWipe.tsx'
import { PictureWords } from './PictureWords.tsx'
import { drawingOf } from './pictureDrawing.ts'
import { fitPicture } from './pictureSize.ts'

const MARGIN = 24
const GAP = 8

const WHOLE = { left: 0, top: 0, width: 1, height: 1 } as const

/** How many tiles there are; none unless pictures stand side by side. */
const tileCount = (state: AppState): number =>
  arrangementOf(state) === 'side-by-side' ? picturesShown(state).length : 0

/** The picture alone, or tiles for those that stand side by side. */
const layOut = (tiles: number, aspect: number, room: Size): TileLayout => {
  const inner = { width: room.width - MARGIN, height: room.height - MARGIN }
  return tiles > 1
    ? tileLayout(tiles, aspect, inner, GAP)
    : { ...fitPicture(aspect, inner.width, inner.height), areas: [WHOLE] }
}

/** Whether what is drawn may be another after a change. */
const hasChanged = (after: AppState, before: AppState): boolean =>
  after.history !== before.history ||
  after.view !== before.view ||
  after.proposal !== before.proposal ||
  (after.playhead !== before.playhead && !after.playback.isPlaying) ||
  (before.playback.isPlaying && !after.playback.isPlaying) ||
  (before.gesture !== undefined && after.gesture === undefined)

/** The pixels of the screen that a place in CSS pixels covers; text and controls may be enlarged. */
const pixelsOf = (place: HTMLElement, { width, height }: Size): Size => {
  const ratio = (window.devicePixelRatio || 1) * (place.currentCSSZoom ?? 1)
  const pixels = (length: number): number => Math.max(1, Math.round(length * ratio))
  return { width: pixels(width), height: pixels(height) }
}

export type PictureProps = {
  /** What lies over the picture besides what the bench puts there. */
  readonly children?: ReactNode
}

/** The picture under the line, graded as it will be delivered, and those it is compared with. */
export const Picture = ({ children }: PictureProps) => {
  const { store, services } = useApp()
  const area = useRef<HTMLDivElement>(null)
  const frame = useRef<HTMLDivElement>(null)
  const preview = useRef<ScreenPreview | undefined>(undefined)
  const room = useElementSize(area)
  const aspect = useAppState((state) => reelOf(state)?.media.displayAspect ?? 4 / 3)
  const tiles = useAppState(tileCount)
  const { width, height, areas } = layOut(tiles, aspect, room)
  const size = { width, height }

  const requestDraw = useFrameLoop(() => {
    const drawing = drawingOf(store.getState(), services, areas)
    if (!preview.current || !frame.current || !drawing) return
    const { planes, coding, view } = drawing
    const mayShrink = store.getState().gesture !== undefined
    preview.current.draw({ ...pixelsOf(frame.current, size), mayShrink, planes, coding, view })
    if (drawing.measured) services.measure(drawing.measured.grade, drawing.measured.framing)
  })

  useEffect(() => {
    // A canvas is handed over for good: whoever draws next needs another.
    const canvas = document.createElement('canvas')
    canvas.role = 'img'
    canvas.ariaLabel = 'Picture'
    frame.current?.prepend(canvas)
    const attached = services.attachPreview(canvas)
    preview.current = attached
    requestDraw()
    return () => {
      attached.dispose()
      canvas.remove()
      preview.current = undefined
    }
  }, [services, requestDraw])
  useEffect(() => {
    const stops = [
      services.frames.subscribe(requestDraw),
      services.held.subscribe(requestDraw),
      services.stills.subscribe(() => {
        if (services.frames.current()?.frame !== store.getState().playhead) requestDraw()
      }),
      store.subscribe((after, before) => {
        if (hasChanged(after, before)) requestDraw()
      }),
    ]
    return () => {
      for (const stop of stops) stop()
    }
  }, [store, services, requestDraw])
  useEffect(() => {
    if (width > 0 && height > 0) requestDraw()
  }, [width, height, requestDraw])
  useEffect(() => {
    if (tiles >= 0) requestDraw()
  }, [tiles, requestDraw])

  return (
    <div className="picture" ref={area}>
      <div className="picture-frame" ref={frame} style={size} tabIndex={-1}>
        <PicturePoints areas={areas} />
        <FramingOverlay size={size} />
        <PictureWords areas={areas} />
        <PictureWipe />
        {children}
      </div>
    </div>
  )
}
