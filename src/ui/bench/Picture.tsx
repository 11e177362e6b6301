import { useEffect, useRef } from 'react'
import { type TileLayout, tileLayout } from '../../core/picture/tileLayout.ts'
import { createPreview, type Preview } from '../../render/createPreview.ts'
import { arrangementOf, picturesShown } from '../../store/compared.ts'
import { tellProblems } from '../../store/notices.ts'
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

/** The picture under the line, graded as it will be delivered, and those it is compared with. */
export const Picture = () => {
  const { store, services } = useApp()
  const area = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const preview = useRef<Preview | undefined>(undefined)
  const room = useElementSize(area)
  const aspect = useAppState((state) => reelOf(state)?.media.displayAspect ?? 4 / 3)
  const tiles = useAppState(tileCount)
  const { width, height, areas } = layOut(tiles, aspect, room)
  const size = { width, height }

  const requestDraw = useFrameLoop(() => {
    const drawing = drawingOf(store.getState(), services, areas)
    if (!preview.current || !drawing) return
    preview.current.setPlanes(drawing.planes, drawing.coding)
    preview.current.draw(drawing.view)
    if (drawing.measured) services.measure(drawing.measured.grade, drawing.measured.framing)
  })

  useEffect(() => {
    if (!canvas.current) return
    const made = createPreview(canvas.current)
    if (!made.ok) {
      tellProblems(store, made.problems)
      return
    }
    preview.current = made.value
    return () => {
      made.value.dispose()
      preview.current = undefined
    }
  }, [store])
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
    if (!canvas.current) return
    const ratio = window.devicePixelRatio || 1
    canvas.current.width = Math.round(width * ratio)
    canvas.current.height = Math.round(height * ratio)
    requestDraw()
  }, [width, height, requestDraw])
  useEffect(() => {
    if (tiles >= 0) requestDraw()
  }, [tiles, requestDraw])

  return (
    <div className="picture" ref={area}>
      <div className="picture-frame" style={size} tabIndex={-1}>
        <canvas ref={canvas} style={size} role="img" aria-label="Picture" />
        <PicturePoints areas={areas} />
        <FramingOverlay size={size} />
        <PictureWords areas={areas} />
        <PictureWipe />
      </div>
    </div>
  )
}
