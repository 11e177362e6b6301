import { useEffect, useId, useMemo, useState } from 'react'
import { REVIEWER_LIMIT } from '../../core/job/limits.ts'
import type { CueId } from '../../core/job/recordIds.ts'
import type { PackShape } from '../../store/agreeing.ts'
import { agreementOfBits, NOT_AGREED } from '../../store/cueBits.ts'
import { cuesOf } from '../../store/queries.ts'
import { standingOf } from '../../store/standing.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { sizeText } from '../parts/sizeText.ts'
import { Tick } from '../parts/Tick.tsx'

type Which = 'all' | 'not-agreed' | 'selected'

const WHICH: readonly { readonly id: Which; readonly label: string }[] = [
  { id: 'all', label: 'all pictures of the reel' },
  { id: 'not-agreed', label: 'those not agreed' },
  { id: 'selected', label: 'those selected in the ledger' },
]

/** Long enough to see a picture move, short enough to be sent. */
const CLIP_SECONDS = 4

const cuesFor = (state: AppState, which: Which): readonly CueId[] => {
  const { bits } = standingOf(state)
  if (which === 'selected') return state.selection
  return cuesOf(state).flatMap(({ id }, index) =>
    which === 'all' || agreementOfBits(bits[index] ?? NOT_AGREED) !== 'agreed' ? [id] : [],
  )
}

/** A page to send to a reviewer: which pictures, for whom, how large, made and saved. */
export const PackCard = () => {
  const { store, services } = useApp()
  const ids = { which: useId(), name: useId() }
  const [which, setWhich] = useState<Which>('all')
  const [madeFor, setMadeFor] = useState('')
  const [hasStills, setHasStills] = useState(false)
  const [hasClips, setHasClips] = useState(false)
  const isOpen = useAppState(({ media }) => media === 'ready')
  const making = useAppState(({ agreeing }) => agreeing.making)
  const wanted = useAppState((state) => cuesFor(state, which).join())
  const shape = useMemo<PackShape>(() => {
    const cues = wanted === '' ? [] : (wanted.split(',') as CueId[])
    return { cues, clipSeconds: hasClips ? CLIP_SECONDS : 0, hasStills }
  }, [wanted, hasClips, hasStills])
  const count = shape.cues.length
  const estimate = useAppState(({ agreeing }) => agreeing.estimate)
  const isMaking = making !== undefined
  useEffect(() => {
    if (isOpen && !isMaking && store.getState().agreeing.estimate?.of !== shape)
      void services.review.estimate(shape)
  }, [store, services, isOpen, isMaking, shape])
  return (
    <section aria-label="Review pack">
      <h2>Review pack</h2>
      <p className="dim">
        One file to send: it opens in any browser, on a phone too, without a network, and holds
        these pictures and nothing else of the job. What is said there comes back as a small file.
      </p>
      <div className="field">
        <label htmlFor={ids.which}>Pictures</label>
        <select
          id={ids.which}
          value={which}
          onChange={(event) => setWhich(event.currentTarget.value as Which)}
        >
          {WHICH.map(({ id, label }) => (
            <option key={id} value={id}>
              {label}
            </option>
          ))}
        </select>
      </div>
      <div className="field">
        <label htmlFor={ids.name}>For whom</label>
        <input
          id={ids.name}
          maxLength={REVIEWER_LIMIT}
          value={madeFor}
          onChange={(event) => setMadeFor(event.currentTarget.value)}
          onKeyDown={(event) => event.stopPropagation()}
        />
      </div>
      <Tick isTicked={hasClips} onTick={setHasClips}>
        in motion as well, {CLIP_SECONDS} s of each at most
      </Tick>
      <Tick isTicked={hasStills} onTick={setHasStills}>
        with full-size stills beside it, in a .zip
      </Tick>
      <p role="status">
        {count === 1 ? '1 picture' : `${count} pictures`}
        {estimate?.of === shape && count > 0 && `, about ${sizeText(estimate.bytes)}`}.
      </p>
      <div className="button-row">
        <button
          type="button"
          className="button primary"
          disabled={!isOpen || count === 0 || isMaking}
          onClick={() => void services.review.make({ ...shape, madeFor })}
        >
          Make the review pack…
        </button>
        {making && (
          <>
            <span role="status">
              {making.done} of {making.total} pictures
            </span>
            <button type="button" className="button" onClick={services.review.stop}>
              Stop
            </button>
          </>
        )}
      </div>
      {!isOpen && <p className="dim">The scan is not open: there are no pictures to put in.</p>}
    </section>
  )
}
