import { moveBoundary } from '../../core/job/commands/moveBoundary.ts'
import { setRamp } from '../../core/job/commands/setRamp.ts'
import { setRampShape } from '../../core/job/commands/setRampShape.ts'
import { isDoubtful } from '../../core/job/isDoubtful.ts'
import type { Cue, RampShape } from '../../core/job/job.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import { perform } from '../../store/document.ts'
import { cueIndex, cuesOf, endOfCue, reelOf } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { NumberField } from '../parts/NumberField.tsx'
import { formatNumber } from '../parts/numberText.ts'
import { STRINGS } from '../strings.ts'

const SHAPES: readonly { readonly shape: RampShape; readonly name: string }[] = [
  { shape: 'linear', name: 'linear' },
  { shape: 'eased', name: 'eased' },
]

/** How a cue begins: on which frame, over how many, and whether that is sure. */
export const CueBeginning = ({ cue }: { cue: Cue }) => {
  const { store, services } = useApp()
  const cues = useAppState(cuesOf)
  const reel = useAppState(reelOf)
  const length = reel ? endOfCue(cues, cue, reel) - cue.first : Number.POSITIVE_INFINITY
  const isFirst = cue.first === 0
  const shared = { owner: cue.id, step: 1, decimals: 0, low: 0, isDisabled: isFirst }
  return (
    <section className="cue-part" aria-label="Beginning">
      <h3>
        cue {cueIndex(cues, cue) + 1} · {STRINGS.boundary[cue.boundary.kind]}
        {isDoubtful(cue) && (
          <span className="strong"> ? {formatNumber(cue.boundary.confidence * 100, 0)} % sure</span>
        )}
      </h3>
      <div className="cue-fields">
        <span>first frame</span>
        <NumberField
          {...shared}
          label="first frame"
          value={cue.first}
          reset={cue.first}
          high={Number.MAX_SAFE_INTEGER}
          onChange={(value, gesture) => {
            const first: Frame = frame(Math.round(value))
            if (perform(store, (job) => moveBoundary(job, cue.id, first), gesture))
              services.seek(first)
          }}
        />
        <span>ramp</span>
        <NumberField
          {...shared}
          label="ramp in frames"
          value={cue.ramp}
          reset={0}
          high={10_000}
          unit=" fr"
          onChange={(value, gesture) =>
            perform(store, (job) => setRamp(job, editedCues(store), Math.round(value)), gesture)
          }
        />
        <span>shape</span>
        <fieldset className="button-row" aria-label="Shape of the ramp" disabled={isFirst}>
          {SHAPES.map(({ shape, name }) => (
            <button
              type="button"
              key={shape}
              className={`button${cue.rampShape === shape ? ' is-on' : ''}`}
              aria-pressed={cue.rampShape === shape}
              onClick={() => perform(store, (job) => setRampShape(job, editedCues(store), shape))}
            >
              {name}
            </button>
          ))}
        </fieldset>
      </div>
      {cue.ramp > 0 && cue.ramp >= length && (
        <p className="strong">▲ longer than the cue: its own values are never reached</p>
      )}
      <div className="button-row">
        <CommandButton id="split" label="Split" />
        <CommandButton id="join" label="Join" />
        {isDoubtful(cue) && (
          <>
            <CommandButton id="keep" label="Keep" />
            <CommandButton id="drop" label="Drop" />
          </>
        )}
      </div>
    </section>
  )
}
