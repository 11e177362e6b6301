import { profileHere, reelOf } from '../../store/queries.ts'
import { useAppState } from '../appContext.ts'
import { FlashPanel } from './FlashPanel.tsx'
import { InstrumentLevels } from './InstrumentLevels.tsx'
import { InstrumentVectorscope } from './InstrumentVectorscope.tsx'
import { PointReading } from './PointReading.tsx'
import { TolerancePanel } from './TolerancePanel.tsx'

/** Levels, colours, tolerance and a point of the picture under the line. */
export const Instruments = () => {
  const profile = useAppState(profileHere)
  const reel = useAppState(reelOf)
  if (!profile || !reel) return null
  return (
    <section className="instruments" aria-label="Instruments">
      <InstrumentLevels profile={profile} />
      <div className="instrument-side">
        <InstrumentVectorscope matrix={reel.media.matrix} />
        <TolerancePanel />
        <PointReading />
        <FlashPanel />
      </div>
    </section>
  )
}
