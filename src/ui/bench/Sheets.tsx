import { setSheet } from '../../store/session.ts'
import type { Sheet } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CueSheet } from './CueSheet.tsx'
import { FramingSheet } from './FramingSheet.tsx'
import { GradeSheet } from './GradeSheet.tsx'
import { SolveBar } from './SolveBar.tsx'

const NAMES: readonly { readonly sheet: Sheet; readonly name: string }[] = [
  { sheet: 'grade', name: 'Grade' },
  { sheet: 'framing', name: 'Framing' },
  { sheet: 'cue', name: 'Cue' },
]

/** The controls of the bench, one sheet at a time: what is not worked on is not shown. */
export const Sheets = () => {
  const { store } = useApp()
  const out = useAppState((state) => state.sheet)
  return (
    <div className="controls">
      <div className="sheet-bar">
        <fieldset className="sheet-names" aria-label="Controls">
          {NAMES.map(({ sheet, name }) => (
            <button
              type="button"
              key={sheet}
              aria-pressed={sheet === out}
              onClick={() => setSheet(store, sheet)}
            >
              {name}
            </button>
          ))}
        </fieldset>
        <TrimChoice />
        <span className="spacer" />
        {out === 'grade' && <SolveBar />}
      </div>
      {out === 'grade' && <GradeSheet />}
      {out === 'framing' && <FramingSheet />}
      {out === 'cue' && <CueSheet />}
    </div>
  )
}

/** What a change does where several cues are selected. */
const TrimChoice = () => {
  const { store } = useApp()
  const count = useAppState((state) => state.selection.length)
  const isTrimming = useAppState((state) => state.isTrimming)
  if (count < 2) return null
  return (
    <fieldset className="trim-choice" aria-label={`A change to ${count} cues`}>
      <span className="strong">{count} cues</span>
      <button
        type="button"
        className={`button${isTrimming ? ' is-on' : ''}`}
        aria-pressed={isTrimming}
        title="adds the same change to each: they keep their differences"
        onClick={() => store.setState({ isTrimming: true })}
      >
        trim
      </button>
      <button
        type="button"
        className={`button${isTrimming ? '' : ' is-on'}`}
        aria-pressed={!isTrimming}
        title="sets the number of all to the same"
        onClick={() => store.setState({ isTrimming: false })}
      >
        set alike
      </button>
    </fieldset>
  )
}
