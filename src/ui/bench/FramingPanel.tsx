import { FRAMING_LIMITS, setFraming } from '../../core/job/commands/setFraming.ts'
import { type Framing, framingMap } from '../../core/picture/framing.ts'
import { endGesture, perform } from '../../store/document.ts'
import { currentCue, reelOf } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { useApp, useAppState } from '../appContext.ts'
import { NumberField } from '../parts/NumberField.tsx'

const FIELDS = [
  {
    field: 'zoom',
    unit: '×',
    factor: 1,
    reset: 1,
    step: 0.01,
    decimals: 3,
    limits: FRAMING_LIMITS.zoom,
  },
  {
    field: 'pan',
    unit: ' %',
    factor: 100,
    reset: 0,
    step: 0.1,
    decimals: 1,
    limits: FRAMING_LIMITS.shift,
  },
  {
    field: 'tilt',
    unit: ' %',
    factor: 100,
    reset: 0,
    step: 0.1,
    decimals: 1,
    limits: FRAMING_LIMITS.shift,
  },
] as const

const SKETCH_WIDTH = 96

/** Where the delivered frame lies on the scanned picture. */
const Sketch = ({ framing, aspect }: { framing: Framing; aspect: number }) => {
  const height = Math.round(SKETCH_WIDTH / aspect)
  const map = framingMap(framing, SKETCH_WIDTH, height)
  return (
    <svg
      className="framing-sketch"
      viewBox={`-12 -10 ${SKETCH_WIDTH + 24} ${height + 20}`}
      aria-hidden="true"
    >
      <title>Framing</title>
      <rect className="scanned" width={SKETCH_WIDTH} height={height} />
      <rect
        className="delivered"
        x={map.offsetX + 0.5 - 0.5 * map.scale}
        y={map.offsetY + 0.5 - 0.5 * map.scale}
        width={SKETCH_WIDTH * map.scale}
        height={height * map.scale}
      />
    </svg>
  )
}

/** The cue's framing: zoom, pan and tilt of the delivered picture over the scanned one. */
export const FramingPanel = () => {
  const { store } = useApp()
  const cue = useAppState(currentCue)
  const reel = useAppState(reelOf)
  if (!cue || !reel) return null
  return (
    <section className="panel framing-panel" aria-label="Framing">
      <h2>framing</h2>
      <Sketch framing={cue.framing} aspect={reel.media.displayAspect} />
      <table>
        <tbody>
          {FIELDS.map(({ field, unit, factor, reset, step, decimals, limits }) => (
            <tr key={field}>
              <th scope="row">{field}</th>
              <td>
                <NumberField
                  label={field}
                  value={cue.framing[field] * factor}
                  owner={cue.id}
                  reset={reset}
                  step={step}
                  decimals={decimals}
                  low={limits[0] * factor}
                  high={limits[1] * factor}
                  unit={unit}
                  onChange={(value, gesture) =>
                    perform(
                      store,
                      (job) =>
                        setFraming(
                          job,
                          editedCues(store),
                          (framing) => ({ ...framing, [field]: value / factor }),
                          field,
                        ),
                      gesture,
                    )
                  }
                  onGestureEnd={() => endGesture(store)}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
