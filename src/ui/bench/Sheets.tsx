import { setSheet } from '../../store/session.ts'
import type { Sheet } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CueSheet } from './CueSheet.tsx'
import { FramingSheet } from './FramingSheet.tsx'
import { GradeSheet } from './GradeSheet.tsx'

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
      </div>
      {out === 'grade' && <GradeSheet />}
      {out === 'framing' && <FramingSheet />}
      {out === 'cue' && <CueSheet />}
    </div>
  )
}
