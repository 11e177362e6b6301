import type { Cue } from '../../core/job/job.ts'
import { USUAL_LIMIT } from '../../store/lookBook.ts'
import { alikeCues, setAlikeLimit } from '../../store/looks.ts'
import { cueIndex, cuesOf, settledFrame } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { NumberField } from '../parts/NumberField.tsx'
import { formatNumber } from '../parts/numberText.ts'

/** As many as fit beside the rest; the others are selected all the same. */
const MOST_SHOWN = 4

/** The cues that look like the one under the line, nearest first: to go to, or to be selected. */
export const AlikeRow = () => {
  const { store, services } = useApp()
  const cues = useAppState(cuesOf)
  const { near, nearest, isKnown, unknown } = useAppState(alikeCues)
  const limit = useAppState(({ looks }) => looks.limit)
  const shown = near.slice(0, MOST_SHOWN)
  const numberOf = (cue: Cue) => cueIndex(cues, cue) + 1
  return (
    <fieldset className="alike-row" aria-label="Cues that look alike">
      <div className="alike-cues">
        {isKnown ? (
          <span>
            <b>{near.length}</b> {near.length === 1 ? 'looks alike' : 'look alike'}
          </span>
        ) : (
          <span className="dim">colours not counted yet</span>
        )}
        {shown.map(({ cue, distance }) => (
          <button
            key={cue.id}
            type="button"
            className="link"
            title={`${formatNumber(distance, 2)} apart`}
            aria-label={`Go to cue ${numberOf(cue)}, ${formatNumber(distance, 2)} apart`}
            onClick={() => services.seek(settledFrame(store.getState(), cue))}
          >
            {numberOf(cue)}
          </button>
        ))}
        {near.length > shown.length && <span className="dim">…</span>}
        {shown.length === 0 && nearest && (
          <span className="dim">
            nearest {numberOf(nearest.cue)}, {formatNumber(nearest.distance, 2)}
          </span>
        )}
      </div>
      <div className="alike-limit">
        <span
          className="dim"
          title={unknown > 0 ? `${unknown} cues are still to be counted` : undefined}
        >
          within
        </span>
        <NumberField
          label="how far apart cues that count as alike may look"
          value={limit}
          owner="alike"
          reset={USUAL_LIMIT}
          step={0.01}
          decimals={2}
          low={0}
          high={1}
          onChange={(value) => setAlikeLimit(store, value)}
        />
        <CommandButton id="select-alike" label="Select" isTerse />
      </div>
    </fieldset>
  )
}
