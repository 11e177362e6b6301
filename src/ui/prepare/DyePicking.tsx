import { useEffect, useState } from 'react'
import { BEST_KEPT } from '../../core/solve/restoreDye.ts'
import { setView } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'
import { ProposalBar } from '../bench/ProposalBar.tsx'
import { CommandButton } from '../parts/CommandButton.tsx'
import { NumberField } from '../parts/NumberField.tsx'

/** Restores dyes from places that should be grey: picking them, what is assumed, what is found. */
export const DyePicking = () => {
  const { store, services } = useApp()
  const isPicking = useAppState(({ pointing }) => pointing.mode === 'dye')
  const isPeeking = useAppState(({ view }) => view.isPeeking)
  const [bestKept, setBestKept] = useState(BEST_KEPT)
  useEffect(() => services.solve.assumeKept(bestKept), [services, bestKept])
  const peek = (shows: boolean) => setView(store, { isPeeking: shows })
  return (
    <div className="dye-picking">
      <div className="button-row">
        <CommandButton id="restore-dye" label="Restore dye" isPressed={isPicking} isTerse />
        <button
          type="button"
          className={isPeeking ? 'button is-on' : 'button'}
          aria-pressed={isPeeking}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId)
            peek(true)
          }}
          onLostPointerCapture={() => peek(false)}
          onKeyDown={(event) => {
            if (event.key === ' ' || event.key === 'Enter') peek(true)
          }}
          onKeyUp={() => peek(false)}
          onBlur={() => peek(false)}
        >
          Hold to see it as scanned
        </button>
        <CommandButton id="cue-back" label="◁ cue" isTerse />
        <CommandButton id="cue-on" label="cue ▷" isTerse />
      </div>
      {isPicking && (
        <div className="dye-kept">
          <span>the dye that kept best has kept, of 1</span>
          <NumberField
            label="what the dye that kept best has kept"
            value={bestKept}
            owner="dye"
            reset={BEST_KEPT}
            step={0.01}
            decimals={2}
            low={0.1}
            high={1}
            onChange={setBestKept}
          />
        </div>
      )}
      <ProposalBar />
    </div>
  )
}
