import { type KeyboardEvent, memo, type PointerEvent, useRef } from 'react'
import { type GradeStage, withStageTint } from '../../core/colour/gradeColumns.ts'
import { type Tint, tintOf } from '../../core/colour/gradeViews.ts'
import type { Triple } from '../../core/colour/triple.ts'
import { vectorscopeTargets } from '../../render/vectorscopeTargets.ts'
import { changeGrade } from '../../store/grading.ts'
import { useApp } from '../appContext.ts'
import { formatNumber } from '../parts/numberText.ts'
import { coarseness } from '../parts/useDragNumber.ts'
import { useGesture } from '../parts/useGesture.ts'

/** The pad's own units: ±100 each way. */
const HALF = 100

/** Where a mark stops, so that it stays whole. */
const EDGE = HALF - 9

/** How far an arrow key moves a tint. */
const NUDGE = 0.002

const DIRECTIONS: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** Where the colours of the bars lie on the plane: only their directions are used. */
const HUES = vectorscopeTargets('bt709', 1).map(({ name, cb, cr }) => {
  const out = 88 / Math.hypot(cb, cr)
  return { name, x: cb * out, y: -cr * out }
})

const isMid = (event: { ctrlKey: boolean; metaKey: boolean }): boolean =>
  event.ctrlKey || event.metaKey

export type TintPadProps = {
  /** The three channels of its own stage, and of the middle. */
  readonly own: Triple
  readonly middle: Triple
  readonly stage: 'lift' | 'gain'
  readonly name: string
  /** The Cb or Cr at the pad's edge. */
  readonly reach: number
}

/**
 * A square pad on the plane of Cb and Cr: a drag tints shadows or highlights, with Ctrl or ⌘ the
 * middle, and luma stays. It moves by how far the pointer goes, wherever it was pressed.
 */
export const TintPad = memo(({ own, middle, stage, name, reach }: TintPadProps) => {
  const { store } = useApp()
  const gesture = useGesture(`${name} tint`)
  const drag = useRef<{ x: number; y: number; stage: GradeStage } | undefined>(undefined)

  const move = (of: GradeStage, by: Tint) =>
    changeGrade(
      store,
      of === 'gamma' ? 'mid tint' : `${name} tint`,
      (grade) => {
        const { cb, cr } = tintOf(grade[of])
        return withStageTint(grade, of, { cb: cb + by.cb, cr: cr + by.cr })
      },
      gesture.name(),
    )
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const from = drag.current
    if (!from) return
    const unit = (coarseness(event) * 2 * reach) / event.currentTarget.clientWidth
    const by = { cb: (event.clientX - from.x) * unit, cr: (from.y - event.clientY) * unit }
    drag.current = { ...from, x: event.clientX, y: event.clientY }
    move(from.stage, by)
  }
  const onPointerEnd = () => {
    drag.current = undefined
    gesture.end()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const direction = DIRECTIONS[event.key]
    const of = isMid(event) ? 'gamma' : stage
    if (direction) {
      event.preventDefault()
      event.stopPropagation()
      const step = NUDGE * coarseness(event)
      move(of, { cb: direction[0] * step, cr: direction[1] * step })
    } else if (event.key === 'Delete') {
      event.preventDefault()
      event.stopPropagation()
      changeGrade(store, `${name} tint`, (grade) => withStageTint(grade, of, { cb: 0, cr: 0 }))
    }
  }
  const place = (triple: Triple) => {
    const { cb, cr } = tintOf(triple)
    const at = (value: number) => Math.min(EDGE, Math.max(-EDGE, (value / reach) * HALF))
    return { x: at(cb), y: -at(cr), isOff: Math.max(Math.abs(cb), Math.abs(cr)) > reach }
  }
  const mark = place(own)
  const mid = place(middle)
  const { cb, cr } = tintOf(own)
  return (
    <div className="tint-pad">
      <span className="dim" aria-hidden="true">
        {name} <span title="Cb and Cr at the edges">±{reach}</span>
      </span>
      <svg
        viewBox={`${-HALF} ${-HALF} ${2 * HALF} ${2 * HALF}`}
        role="application"
        aria-roledescription="tint pad"
        aria-label={`${name} tint, Cb ${formatNumber(cb, 3)}, Cr ${formatNumber(cr, 3)}`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it is worked by arrow keys
        tabIndex={0}
        onPointerDown={(event) => {
          if (event.button !== 0) return
          event.currentTarget.setPointerCapture(event.pointerId)
          drag.current = {
            x: event.clientX,
            y: event.clientY,
            stage: isMid(event) ? 'gamma' : stage,
          }
        }}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerEnd}
        onPointerCancel={onPointerEnd}
        onContextMenu={(event) => event.preventDefault()}
        onDoubleClick={(event) =>
          changeGrade(store, `${name} tint`, (grade) =>
            withStageTint(grade, isMid(event) ? 'gamma' : stage, { cb: 0, cr: 0 }),
          )
        }
        onKeyDown={onKeyDown}
        onKeyUp={(event) => {
          if (event.key in DIRECTIONS) gesture.endSoon()
        }}
        onBlur={gesture.end}
      >
        <title>{`${name}: drag to tint (Ctrl or ⌘ the middle; Shift coarse, Alt fine), double click resets`}</title>
        <rect className="pad-ground" x={-HALF} y={-HALF} width={2 * HALF} height={2 * HALF} />
        <path className="pad-axis" d={`M${-HALF} 0H${HALF}M0 ${-HALF}V${HALF}`} />
        <circle className="pad-axis" r={HALF / 2} />
        {HUES.map((hue) => (
          <text key={hue.name} x={hue.x} y={hue.y} className="pad-hue">
            {hue.name}
          </text>
        ))}
        <path className="pad-arm" d={`M0 0L${mark.x} ${mark.y}`} />
        <rect className="pad-mid" x={mid.x - 5} y={mid.y - 5} width={10} height={10} />
        <circle
          className={mark.isOff ? 'pad-own is-off' : 'pad-own'}
          cx={mark.x}
          cy={mark.y}
          r={7}
        />
      </svg>
    </div>
  )
})
