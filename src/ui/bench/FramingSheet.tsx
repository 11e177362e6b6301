import { FRAMING_LIMITS, setFraming } from '../../core/job/commands/setFraming.ts'
import { type Framing, framingOutline, IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import { endGesture, perform } from '../../store/document.ts'
import { currentCue, reelOf } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { useApp, useAppState } from '../appContext.ts'
import { NumberField } from '../parts/NumberField.tsx'

const FIELDS = [
  { field: 'zoom', unit: '×', factor: 1, step: 0.01, decimals: 3 },
  { field: 'squeeze', unit: '×', factor: 1, step: 0.01, decimals: 3 },
  { field: 'pan', unit: ' %', factor: 100, step: 0.1, decimals: 1 },
  { field: 'rotation', unit: '°', factor: 1, step: 0.05, decimals: 2 },
  { field: 'tilt', unit: ' %', factor: 100, step: 0.1, decimals: 1 },
  { field: 'blanking', unit: ' %', factor: 100, step: 0.1, decimals: 1 },
] as const

const SKETCH_WIDTH = 96

/** Where the delivered frame lies on the scanned picture. */
const Sketch = ({ framing, aspect }: { framing: Framing; aspect: number }) => {
  const height = Math.round(SKETCH_WIDTH / aspect)
  const outline = framingOutline(framing, SKETCH_WIDTH, height)
  return (
    <svg
      className="framing-sketch"
      viewBox={`-12 -10 ${SKETCH_WIDTH + 24} ${height + 20}`}
      aria-hidden="true"
    >
      <title>Framing</title>
      <rect className="scanned" width={SKETCH_WIDTH} height={height} />
      <polygon className="delivered" points={outline.map((corner) => corner.join()).join(' ')} />
    </svg>
  )
}

/** Width over height of what is not blanked, as a colourist names it. */
const openRatio = ({ blanking }: Framing, aspect: number): string =>
  `${(blanking >= 0 ? aspect / (1 - blanking) : aspect * (1 + blanking)).toFixed(2)} : 1`

/** The cue's framing: where the delivered picture lies on the scanned one, and what is blanked. */
export const FramingSheet = () => {
  const { store } = useApp()
  const cue = useAppState(currentCue)
  const reel = useAppState(reelOf)
  const edited = useAppState((state) => state.selection.length)
  if (!cue || !reel) return null
  const { displayAspect } = reel.media
  return (
    <section className="panel framing-panel" aria-label="Framing">
      <h2>
        framing{' '}
        {edited > 1 ? (
          <span className="strong">of {edited} cues</span>
        ) : (
          `· ${openRatio(cue.framing, displayAspect)}`
        )}
      </h2>
      <Sketch framing={cue.framing} aspect={displayAspect} />
      <div className="framing-fields">
        {FIELDS.map(({ field, unit, factor, step, decimals }) => (
          <div key={field}>
            <span className="dim" aria-hidden="true">
              {field}
            </span>
            <NumberField
              label={field}
              value={cue.framing[field] * factor}
              owner={cue.id}
              reset={IDENTITY_FRAMING[field] * factor}
              step={step}
              decimals={decimals}
              low={FRAMING_LIMITS[field][0] * factor}
              high={FRAMING_LIMITS[field][1] * factor}
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
          </div>
        ))}
      </div>
    </section>
  )
}
