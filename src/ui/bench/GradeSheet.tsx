import { GradeTable } from './GradeTable.tsx'
import { TintPad } from './TintPad.tsx'
import { TransferPlot } from './TransferPlot.tsx'

/** The controls of a grade: its curves, its tints, its numbers. All show the same grade. */
export const GradeSheet = () => (
  <section className="sheet grade-sheet" aria-label="Grade">
    <TransferPlot />
    <div className="tint-pads">
      <TintPad stage="lift" name="shadows" reach={0.12} />
      <TintPad stage="gain" name="highlights" reach={0.25} />
      <span className="dim">with Ctrl or ⌘: the middle, □</span>
    </div>
    <GradeTable />
  </section>
)
