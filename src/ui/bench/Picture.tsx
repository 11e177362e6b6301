import { useEffect, useRef } from 'react'
import { levelLimits } from '../../core/tolerance/levelLimits.ts'
import { createPreview, type Preview } from '../../render/createPreview.ts'
import type { PreviewView, Compare as RenderCompare } from '../../render/previewView.ts'
import { tellProblems } from '../../store/notices.ts'
import { profileOf, reelOf, valuesAtFrame } from '../../store/queries.ts'
import { setView } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { formatNumber } from '../parts/numberText.ts'
import { useElementSize } from '../parts/useElementSize.ts'
import { useFrameLoop } from '../parts/useFrameLoop.ts'
import type { ShownFrame } from '../services.ts'
import { fitPicture } from './pictureSize.ts'

const compareOf = ({ view }: AppState): RenderCompare =>
  view.isPeeking
    ? { kind: 'scanned' }
    : view.arrangement === 'wipe'
      ? { kind: 'wipe', at: view.wipeAt }
      : { kind: 'none' }

/** What is to be drawn for a frame, from the job as it is now. */
const viewOf = (state: AppState, shown: ShownFrame): PreviewView | undefined => {
  const values = valuesAtFrame(state, shown.frame)
  const job = state.history?.job
  if (!values || !job) return undefined
  return {
    grade: values.grade,
    framing: values.framing,
    compare: compareOf(state),
    excursions: state.view.showsExcursions
      ? { ...levelLimits(profileOf(job)), matrix: shown.coding.matrix }
      : null,
    isMoving: state.playback.isPlaying || state.gesture !== undefined,
  }
}

/** The picture under the line, graded as it will be delivered, with the wipe over it. */
export const Picture = () => {
  const { store, services } = useApp()
  const area = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const preview = useRef<Preview | undefined>(undefined)
  const drawn = useRef<ShownFrame | undefined>(undefined)
  const room = useElementSize(area)
  const reel = useAppState(reelOf)
  const view = useAppState((state) => state.view)
  const size = fitPicture(reel?.media.displayAspect ?? 4 / 3, room.width - 24, room.height - 24)

  const draw = () => {
    const shown = services.frames.current()
    if (!preview.current || !shown) return
    if (shown !== drawn.current) {
      preview.current.setPlanes(shown.planes, shown.coding)
      drawn.current = shown
    }
    const state = store.getState()
    const wanted = viewOf(state, shown)
    if (!wanted) return
    preview.current.draw(wanted)
    services.measure(wanted.grade, wanted.framing)
  }
  const requestDraw = useFrameLoop(draw)

  useEffect(() => {
    if (!canvas.current) return
    const made = createPreview(canvas.current)
    if (!made.ok) {
      tellProblems(store, made.problems)
      return
    }
    preview.current = made.value
    drawn.current = undefined
    return () => {
      made.value.dispose()
      preview.current = undefined
    }
  }, [store])
  useEffect(() => services.frames.subscribe(requestDraw), [services, requestDraw])
  useEffect(
    () =>
      store.subscribe((after, before) => {
        const isStopped = before.playback.isPlaying && !after.playback.isPlaying
        const isAtRest = before.gesture !== undefined && after.gesture === undefined
        if (isStopped || isAtRest || after.history !== before.history || after.view !== before.view)
          requestDraw()
      }),
    [store, requestDraw],
  )
  useEffect(() => {
    if (!canvas.current) return
    const ratio = window.devicePixelRatio || 1
    canvas.current.width = Math.round(size.width * ratio)
    canvas.current.height = Math.round(size.height * ratio)
    requestDraw()
  }, [size.width, size.height, requestDraw])

  const moveWipe = (clientX: number) => {
    const box = canvas.current?.getBoundingClientRect()
    if (!box) return
    setView(store, { wipeAt: Math.min(1, Math.max(0, (clientX - box.left) / box.width)) })
  }
  return (
    <div className="picture" ref={area}>
      <div className="picture-frame" style={size}>
        <canvas ref={canvas} style={size} role="img" aria-label="Picture" />
        {view.arrangement === 'wipe' && (
          <div
            className="wipe"
            role="slider"
            tabIndex={0}
            aria-label="Wipe: scanned left, graded right"
            aria-valuemin={0}
            aria-valuemax={100}
            aria-valuenow={Math.round(view.wipeAt * 100)}
            aria-valuetext={`${formatNumber(view.wipeAt * 100, 0)} %`}
            style={{ left: `${view.wipeAt * 100}%` }}
            onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
            onPointerMove={(event) => {
              if (event.currentTarget.hasPointerCapture(event.pointerId)) moveWipe(event.clientX)
            }}
            onKeyDown={(event) => {
              const direction = { ArrowLeft: -1, ArrowRight: 1 }[event.key]
              if (direction === undefined) return
              event.preventDefault()
              const wipeAt = Math.min(1, Math.max(0, view.wipeAt + direction * 0.02))
              setView(store, { wipeAt })
            }}
          />
        )}
        {(view.isPeeking || view.arrangement === 'wipe') && (
          <span className="picture-word left">scanned</span>
        )}
        {view.arrangement === 'wipe' && <span className="picture-word right">graded</span>}
      </div>
    </div>
  )
}
