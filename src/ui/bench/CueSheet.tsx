import { currentCue } from '../../store/queries.ts'
import { useAppState } from '../appContext.ts'
import { AlikeRow } from './AlikeRow.tsx'
import { Alternates } from './Alternates.tsx'
import { CarryPanel } from './CarryPanel.tsx'
import { CueBeginning } from './CueBeginning.tsx'
import { CueMarks } from './CueMarks.tsx'

/** The cue itself: how it begins, its other grades, what goes to other cues, its marks and note. */
export const CueSheet = () => {
  const cue = useAppState(currentCue)
  if (!cue) return null
  return (
    <section className="sheet cue-sheet" aria-label="Cue">
      <CueBeginning cue={cue} />
      <Alternates cue={cue} key={`alternates ${cue.id}`} />
      <div className="cue-part">
        <CarryPanel />
        <AlikeRow />
      </div>
      <CueMarks cue={cue} key={cue.id} />
    </section>
  )
}
