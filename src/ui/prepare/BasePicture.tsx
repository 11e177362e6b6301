import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react'
import { IDENTITY_GRADE } from '../../core/colour/grade.ts'
import { PRINT_BASE } from '../../core/film/filmBase.ts'
import { IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import { createPreview, type Preview } from '../../render/createPreview.ts'
import { tellProblems } from '../../store/notices.ts'
import { pickPlace } from '../../store/picking.ts'
import type { ScanPoint } from '../../store/pointing.ts'
import { pointOver } from '../../store/pointingChanges.ts'
import { shownBase } from '../../store/proposal.ts'
import { reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { fitPicture } from '../bench/pictureSize.ts'
import { useElementSize } from '../parts/useElementSize.ts'
import { useFrameLoop } from '../parts/useFrameLoop.ts'

const UNGRADED = {
  grade: IDENTITY_GRADE,
  framing: IDENTITY_FRAMING,
  compare: { kind: 'none' },
  excursions: null,
  isMoving: false,
} as const

/** The frame under the line as the base makes it, before any grade, or as it was scanned. */
export const BasePicture = ({ aspect }: { aspect: number }) => {
  const { store, services } = useApp()
  const area = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const preview = useRef<Preview | undefined>(undefined)
  const room = useElementSize(area)
  const size = fitPicture(aspect, room.width, room.height)
  const isPicking = useAppState(({ pointing }) => pointing.mode === 'dye')

  const requestDraw = useFrameLoop(() => {
    const shown = services.frames.current()
    const state = store.getState()
    const reel = reelOf(state)
    if (!preview.current || !shown || !reel) return
    const base = state.view.isPeeking ? PRINT_BASE : shownBase(state, reel)
    preview.current.setPlanes(shown.planes, { ...shown.coding, base })
    preview.current.draw({ ...UNGRADED, display: state.view.display })
  })
  useEffect(() => {
    if (!canvas.current) return
    const made = createPreview(canvas.current)
    if (!made.ok) {
      tellProblems(store, made.problems)
      return
    }
    preview.current = made.value
    const stops = [
      services.frames.subscribe(requestDraw),
      store.subscribe((state, before) => {
        if (state.proposal !== before.proposal || state.view !== before.view) requestDraw()
      }),
    ]
    return () => {
      for (const stop of stops) stop()
      made.value.dispose()
      preview.current = undefined
    }
  }, [store, services, requestDraw])
  useEffect(() => {
    if (!canvas.current) return
    const ratio = (window.devicePixelRatio || 1) * (canvas.current.currentCSSZoom ?? 1)
    canvas.current.width = Math.round(size.width * ratio)
    canvas.current.height = Math.round(size.height * ratio)
    requestDraw()
  }, [size.width, size.height, requestDraw])
  return (
    <div className="picture base-picture" ref={area}>
      <div
        className="picture-frame"
        role="presentation"
        style={size}
        onPointerMove={(event) => pointOver(store, placeOf(event))}
        onPointerLeave={() => pointOver(store, undefined)}
      >
        <canvas
          ref={canvas}
          style={size}
          role="img"
          aria-label="The frame under the line, before any grade"
        />
        {isPicking && <DyePlaces />}
      </div>
    </div>
  )
}

const MIDDLE: ScanPoint = { x: 0.5, y: 0.5 }

const inside = (part: number): number => Math.min(1, Math.max(0, part))

/** Where on the scan a pointer is: the picture is the whole of it. */
const placeOf = (event: PointerEvent<HTMLElement>): ScanPoint => {
  const box = event.currentTarget.getBoundingClientRect()
  return {
    x: inside((event.clientX - box.left) / box.width),
    y: inside((event.clientY - box.top) / box.height),
  }
}

/** Takes presses as places, and arrow keys and Enter for a cross that is moved. */
const DyePlaces = () => {
  const { store } = useApp()
  const picks = useAppState(({ pointing }) => pointing.picks)
  const [cross, setCross] = useState<ScanPoint>()
  const onKeyDown = (event: KeyboardEvent) => {
    const step = event.shiftKey ? 0.05 : event.altKey ? 0.002 : 0.01
    const move = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    }[event.key]
    if (move) {
      event.preventDefault()
      event.stopPropagation()
      const { x, y } = cross ?? MIDDLE
      setCross({ x: inside(x + (move[0] ?? 0)), y: inside(y + (move[1] ?? 0)) })
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      event.stopPropagation()
      pickPlace(store, { ...(cross ?? MIDDLE) })
    }
  }
  return (
    <>
      <button
        type="button"
        className="base-picks"
        aria-label="Pick a place that should be grey: press on it, or move the cross by arrow keys and press Enter"
        onKeyDown={onKeyDown}
        onFocus={(event) => {
          if (event.currentTarget.matches(':focus-visible')) setCross((before) => before ?? MIDDLE)
        }}
        onBlur={() => setCross(undefined)}
        onPointerDown={(event) => {
          setCross(undefined)
          pickPlace(store, placeOf(event))
        }}
      />
      {picks.map(({ x, y }, i) => (
        <span
          key={`${x} ${y}`}
          className="base-pick"
          style={{ left: `${x * 100}%`, top: `${y * 100}%` }}
        >
          {i + 1}
        </span>
      ))}
      {cross && (
        <span
          className="base-cross"
          style={{ left: `${cross.x * 100}%`, top: `${cross.y * 100}%` }}
        />
      )}
    </>
  )
}
