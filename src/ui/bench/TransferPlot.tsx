import { scaleLinear } from 'd3-scale'
import { useMemo, useRef } from 'react'
import type { Grade } from '../../core/colour/grade.ts'
import type { GradeColumn } from '../../core/colour/gradeColumns.ts'
import { HANDLE_AT, type TransferHandle } from '../../core/colour/transferHandles.ts'
import { profileHere } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { useElementSize } from '../parts/useElementSize.ts'
import {
  Curves,
  OutsideZones,
  PLOT_BOTTOM,
  PLOT_HIGH,
  PLOT_LEFT,
  PLOT_LOW,
  PlotAxes,
  ReelLevels,
} from './PlotGround.tsx'
import { PlotHandle } from './PlotHandle.tsx'

const COLUMNS: readonly { readonly column: GradeColumn; readonly name: string }[] = [
  { column: 'all', name: 'all' },
  { column: 0, name: 'R' },
  { column: 1, name: 'G' },
  { column: 2, name: 'B' },
]

const HANDLES: readonly TransferHandle[] = ['black', 'mid', 'white']

/** What a cue's colours become, channel by channel, with handles at black, mid and white. */
export const TransferPlot = ({ grade }: { grade: Grade }) => {
  const { store } = useApp()
  const profile = useAppState(profileHere)
  const column = useAppState((state) => state.plotColumn)
  const place = useRef<HTMLDivElement>(null)
  const { width, height } = useElementSize(place)
  const x = useMemo(
    () => scaleLinear([PLOT_LOW, PLOT_HIGH], [PLOT_LEFT, Math.max(PLOT_LEFT + 1, width - 4)]),
    [width],
  )
  const y = useMemo(
    () => scaleLinear([PLOT_LOW, PLOT_HIGH], [Math.max(1, height - PLOT_BOTTOM), 8]),
    [height],
  )
  if (!profile) return null
  const { rgb, luma } = profile
  return (
    <section className="transfer-plot" aria-label="Transfer plot">
      <fieldset className="plot-columns" aria-label="Curve">
        {COLUMNS.map((each) => (
          <button
            type="button"
            key={each.name}
            aria-pressed={each.column === column}
            onClick={() => store.setState({ plotColumn: each.column })}
          >
            {each.name}
          </button>
        ))}
      </fieldset>
      <div className="plot-place" ref={place}>
        {width > 0 && (
          <svg width={width} height={height}>
            <title>what comes out against what was scanned</title>
            {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus */}
            <g aria-hidden="true">
              <ReelLevels x={x} column={column} bottom={height - PLOT_BOTTOM} />
              <OutsideZones limits={rgb ?? luma} x={x} y={y} />
              <PlotAxes x={x} y={y} height={height} />
              <Curves grade={grade} column={column} x={x} y={y} />
            </g>
            {HANDLES.map((handle) => (
              <PlotHandle
                key={handle}
                handle={handle}
                column={column}
                name={COLUMNS.find((each) => each.column === column)?.name ?? ''}
                grade={grade}
                cx={x(HANDLE_AT[handle])}
                y={y}
              />
            ))}
          </svg>
        )}
      </div>
    </section>
  )
}
