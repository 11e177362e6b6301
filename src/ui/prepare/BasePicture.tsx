import { useEffect, useRef } from 'react'
import { IDENTITY_GRADE } from '../../core/colour/grade.ts'
import { IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import { createPreview, type Preview } from '../../render/createPreview.ts'
import { tellProblems } from '../../store/notices.ts'
import { useApp } from '../appContext.ts'
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

/** The frame under the line as the base makes it, before any grade. */
export const BasePicture = ({ aspect }: { aspect: number }) => {
  const { store, services } = useApp()
  const area = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const preview = useRef<Preview | undefined>(undefined)
  const room = useElementSize(area)
  const size = fitPicture(aspect, room.width, room.height)

  const requestDraw = useFrameLoop(() => {
    const shown = services.frames.current()
    if (!preview.current || !shown) return
    preview.current.setPlanes(shown.planes, shown.coding)
    preview.current.draw(UNGRADED)
  })
  useEffect(() => {
    if (!canvas.current) return
    const made = createPreview(canvas.current)
    if (!made.ok) {
      tellProblems(store, made.problems)
      return
    }
    preview.current = made.value
    const stop = services.frames.subscribe(requestDraw)
    return () => {
      stop()
      made.value.dispose()
      preview.current = undefined
    }
  }, [store, services, requestDraw])
  useEffect(() => {
    if (!canvas.current) return
    const ratio = window.devicePixelRatio || 1
    canvas.current.width = Math.round(size.width * ratio)
    canvas.current.height = Math.round(size.height * ratio)
    requestDraw()
  }, [size.width, size.height, requestDraw])
  return (
    <div className="picture base-picture" ref={area}>
      <canvas
        ref={canvas}
        style={size}
        role="img"
        aria-label="The frame under the line, before any grade"
      />
    </div>
  )
}
