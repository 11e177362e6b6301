import type { Grade } from '../../core/colour/grade.ts'
import { setGrade } from '../../core/job/commands/setGrade.ts'
import { endGesture, perform } from '../../store/document.ts'
import { currentCue } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { useApp, useAppState } from '../appContext.ts'
import { NumberField } from '../parts/NumberField.tsx'
import { type Column, type Stage, stageValue, withStageValue } from './gradeEdits.ts'

const STAGES: readonly { stage: Stage; reset: number; low: number; high: number }[] = [
  { stage: 'gain', reset: 1, low: -1, high: 4 },
  { stage: 'gamma', reset: 1, low: 0.1, high: 5 },
  { stage: 'lift', reset: 0, low: -1, high: 1 },
]

const COLUMNS: readonly { column: Column; name: string }[] = [
  { column: 'all', name: 'all' },
  { column: 0, name: 'R' },
  { column: 1, name: 'G' },
  { column: 2, name: 'B' },
]

/** The cue's grade as numbers: gain, gamma and lift for all and for each channel; saturation. */
export const GradeSheet = () => {
  const { store } = useApp()
  const cue = useAppState(currentCue)
  const edited = useAppState((state) => state.selection.length)
  if (!cue) return null
  const change = (label: string, edit: (grade: Grade) => Grade, gesture: string | undefined) =>
    perform(store, (job) => setGrade(job, editedCues(store), edit, label), gesture)
  const onGestureEnd = () => endGesture(store)
  return (
    <section className="panel grade-panel" aria-label="Grade">
      <h2>grade {edited > 1 && <span className="strong">of {edited} cues</span>}</h2>
      <table className="grade-table">
        <thead>
          <tr>
            <td />
            {COLUMNS.map(({ name }) => (
              <th key={name} scope="col" className={`channel-${name}`}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {STAGES.map(({ stage, reset, low, high }) => (
            <tr key={stage}>
              <th scope="row">{stage}</th>
              {COLUMNS.map(({ column, name }) => (
                <td key={name}>
                  <NumberField
                    label={`${stage} ${name}`}
                    value={stageValue(cue.grade, stage, column)}
                    owner={cue.id}
                    reset={reset}
                    step={0.01}
                    decimals={3}
                    low={low}
                    high={high}
                    onChange={(value, gesture) =>
                      change(
                        `${stage} ${name}`,
                        (grade) => withStageValue(grade, stage, column, value),
                        gesture,
                      )
                    }
                    onGestureEnd={onGestureEnd}
                  />
                </td>
              ))}
            </tr>
          ))}
          <tr>
            <th scope="row">saturation</th>
            <td>
              <NumberField
                label="saturation"
                value={cue.grade.saturation}
                owner={cue.id}
                reset={1}
                step={0.01}
                decimals={3}
                low={0}
                high={4}
                onChange={(saturation, gesture) =>
                  change('saturation', (grade) => ({ ...grade, saturation }), gesture)
                }
                onGestureEnd={onGestureEnd}
              />
            </td>
          </tr>
        </tbody>
      </table>
    </section>
  )
}
