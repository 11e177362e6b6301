import { type PointerEvent, useState } from 'react'
import type { Mark, MarkPoint } from '../../core/agreement/answer.ts'
import { markPath, markPoint } from '../../core/agreement/marks.ts'
import { MOST_MARK_POINTS, MOST_MARKS } from '../../core/job/limits.ts'

const placeOf = ({ clientX, clientY, currentTarget }: PointerEvent): MarkPoint => {
  const { left, top, width, height } = currentTarget.getBoundingClientRect()
  return markPoint((clientX - left) / width, (clientY - top) / height)
}

export type DrawingSheetProps = {
  readonly marks: readonly Mark[]
  /** Takes a line that was drawn; undefined where nothing is drawn, only shown. */
  readonly onMark?: ((mark: Mark) => void) | undefined
}

/** Lines over a picture, and a sheet to draw them on. */
export const DrawingSheet = ({ marks, onMark }: DrawingSheetProps) => {
  const [line, setLine] = useState<Mark>()
  const end = () => {
    if (line) onMark?.(line)
    setLine(undefined)
  }
  return (
    <svg
      className={onMark ? 'drawing is-open' : 'drawing'}
      viewBox="0 0 1000 1000"
      preserveAspectRatio="none"
      aria-hidden="true"
      onPointerDown={(event) => {
        if (!onMark || marks.length >= MOST_MARKS) return
        event.currentTarget.setPointerCapture(event.pointerId)
        setLine([placeOf(event)])
      }}
      onPointerMove={(event) => {
        if (line && line.length < MOST_MARK_POINTS) setLine([...line, placeOf(event)])
      }}
      onPointerUp={end}
      onPointerCancel={end}
    >
      {[...marks, ...(line ? [line] : [])].map((mark, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines in the order they were drawn
        <g key={index}>
          <polyline className="under" points={markPath(mark)} />
          <polyline className="over" points={markPath(mark)} />
        </g>
      ))}
    </svg>
  )
}
