import { MissingMedia } from '../parts/MissingMedia.tsx'
import { CuePanel } from './CuePanel.tsx'
import { FramingPanel } from './FramingPanel.tsx'
import { GradeTable } from './GradeTable.tsx'
import { Instruments } from './Instruments.tsx'
import { Picture } from './Picture.tsx'
import { PictureBar } from './PictureBar.tsx'

/** Where a cue is judged and changed: the picture, the instruments, the controls. */
export const Bench = () => (
  <section className="bench" aria-label="Bench">
    <PictureBar />
    <div className="picture-place">
      <Picture />
      <MissingMedia />
    </div>
    <Instruments />
    <div className="controls">
      <GradeTable />
      <FramingPanel />
      <CuePanel />
    </div>
  </section>
)
