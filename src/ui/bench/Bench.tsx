import { MissingMedia } from '../parts/MissingMedia.tsx'
import { Instruments } from './Instruments.tsx'
import { Picture } from './Picture.tsx'
import { PictureBar } from './PictureBar.tsx'
import { Sheets } from './Sheets.tsx'

/** Where a cue is judged and changed: the picture, the instruments, the controls. */
export const Bench = () => (
  <section className="bench" aria-label="Bench">
    <PictureBar />
    <div className="picture-place">
      <Picture />
      <MissingMedia />
    </div>
    <Instruments />
    <Sheets />
  </section>
)
