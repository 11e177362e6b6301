import { useMemo, useState } from 'react'
import { cuesOf, settledFrame } from '../../store/queries.ts'
import { selectCue } from '../../store/selection.ts'
import { setStep } from '../../store/session.ts'
import { useApp } from '../appContext.ts'
import { rangesOf } from '../parts/numberRanges.ts'

/** Stretches shown at first, and how many more each time. */
const SHOWN = 24
const MORE = 240

export type CueStretchesProps = {
  /** What they are told for. */
  readonly subject: string
  /** Numbers from 1, rising. */
  readonly cues: readonly number[]
}

/** Cues by their numbers, neighbours as stretches; each goes to its first cue. */
export const CueStretches = ({ subject, cues }: CueStretchesProps) => {
  const app = useApp()
  const [shown, setShown] = useState(SHOWN)
  const ranges = useMemo(() => rangesOf(cues), [cues])
  const goTo = (number: number) => {
    const { store, services } = app
    const cue = cuesOf(store.getState())[number - 1]
    if (!cue) return
    setStep(store, 'rehearse')
    selectCue(store, cue, 'only')
    services.seek(settledFrame(store.getState(), cue))
  }
  return (
    <fieldset className="cue-stretches" aria-label={`${subject}: cues`}>
      {ranges.slice(0, shown).map(([from, to]) => (
        <button
          type="button"
          key={from}
          aria-label={from === to ? `Go to cue ${from}` : `Go to cue ${from}, of ${from} to ${to}`}
          onClick={() => goTo(from)}
        >
          {from === to ? from : `${from}–${to}`}
        </button>
      ))}
      {ranges.length > shown && (
        <button type="button" onClick={() => setShown(shown + MORE)}>
          {ranges.length - shown} more…
        </button>
      )}
    </fieldset>
  )
}
