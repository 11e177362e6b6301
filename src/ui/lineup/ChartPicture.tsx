import { type PointerEvent, useState } from 'react'
import type { Region } from '../../core/chart/region.ts'
import { markOut } from '../../store/charting.ts'
import { useApp } from '../appContext.ts'
import { NumberCell } from '../parts/NumberCell.tsx'

export type ChartPictureProps = {
  readonly address: string
  readonly width: number
  readonly height: number
  readonly regions: readonly Region[]
}

type Drag = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number }

const regionOf = ({ x0, y0, x1, y1 }: Drag): Region => ({
  ...{ x: Math.min(x0, x1), y: Math.min(y0, y1) },
  ...{ width: Math.abs(x1 - x0), height: Math.abs(y1 - y0) },
})

const FIELDS = ['x', 'y', 'width', 'height'] as const
const WORDS = { x: 'from the left', y: 'from the top', width: 'wide', height: 'high' } as const

/** A picture of a chart: regions are marked out by dragging over it, or typed. */
export const ChartPicture = ({ address, width, height, regions }: ChartPictureProps) => {
  const { store } = useApp()
  const [drag, setDrag] = useState<Drag>()
  const [typed, setTyped] = useState<Partial<Region>>({})
  const placeOf = (event: PointerEvent<SVGSVGElement>): readonly [number, number] => {
    const box = event.currentTarget.getBoundingClientRect()
    const x = Math.round((width * (event.clientX - box.left)) / box.width)
    const y = Math.round((height * (event.clientY - box.top)) / box.height)
    return [Math.min(width, Math.max(0, x)), Math.min(height, Math.max(0, y))]
  }
  const shown = drag ? [...regions, regionOf(drag)] : regions
  const isTyped = FIELDS.every((field) => typed[field] !== undefined)
  return (
    <>
      <svg
        className="chart-picture"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label="The chart; drag over it to mark a region out"
        onPointerDown={(event) => {
          const [x, y] = placeOf(event)
          event.currentTarget.setPointerCapture(event.pointerId)
          setDrag({ x0: x, y0: y, x1: x, y1: y })
        }}
        onPointerMove={(event) => {
          if (!drag) return
          const [x1, y1] = placeOf(event)
          setDrag({ ...drag, x1, y1 })
        }}
        onPointerUp={() => {
          if (drag && drag.x0 !== drag.x1 && drag.y0 !== drag.y1) markOut(store, regionOf(drag))
          setDrag(undefined)
        }}
        onPointerCancel={() => setDrag(undefined)}
      >
        <image href={address} width={width} height={height} />
        {shown.map(({ x, y, ...size }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a region is known by its place
          <g key={at}>
            <rect className="under" x={x} y={y} {...size} />
            <rect x={x} y={y} {...size} />
          </g>
        ))}
      </svg>
      <form
        className="inline-fields"
        onSubmit={(event) => {
          event.preventDefault()
          if (isTyped) markOut(store, typed as Region)
        }}
      >
        {FIELDS.map((field) => (
          <span key={field}>
            <NumberCell
              label={`Region, ${WORDS[field]}`}
              value={typed[field] ?? regions.at(-1)?.[field]}
              onCommit={(value) => setTyped({ ...regions.at(-1), ...typed, [field]: value })}
            />{' '}
            <span className="dim">{WORDS[field]}</span>
          </span>
        ))}
        <button type="submit" className="button" disabled={!isTyped}>
          Mark it out
        </button>
      </form>
    </>
  )
}
