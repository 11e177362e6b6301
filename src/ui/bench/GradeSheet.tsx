import { shownGrade } from '../../store/proposal.ts'
import { currentCue } from '../../store/queries.ts'
import { useAppState } from '../appContext.ts'
import { GradeTable } from './GradeTable.tsx'
import { TintPad } from './TintPad.tsx'
import { TransferPlot } from './TransferPlot.tsx'

/**
 * The controls of a grade: its curves, its tints, its numbers. All show the same grade: while one
 * is proposed, that one, and they wait until it is kept or left.
 */
export const GradeSheet = () => {
  const cue = useAppState(currentCue)
  const grade = useAppState((state) => cue && shownGrade(state, cue))
  if (!cue || !grade) return null
  return (
    <section className="sheet grade-sheet" aria-label="Grade" inert={grade !== cue.grade}>
      <TransferPlot grade={grade} />
      <div className="tint-pads">
        <TintPad own={grade.lift} middle={grade.gamma} stage="lift" name="shadows" reach={0.12} />
        <TintPad
          own={grade.gain}
          middle={grade.gamma}
          stage="gain"
          name="highlights"
          reach={0.25}
        />
        <span className="dim">with Ctrl or ⌘: the middle, □</span>
      </div>
      <GradeTable grade={grade} owner={cue.id} />
    </section>
  )
}
