import { useState } from 'react'
import { frame } from '../../core/time/frame.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { reelOf } from '../../store/queries.ts'
import { setStep } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'

/** Frames that are told at first. */
const TOLD_AT_FIRST = 20

/** Frames that show the one before, by timecode; each leads to its place on the reel. */
export const HeldFrames = ({ frames }: { readonly frames: readonly number[] }) => {
  const { store, services } = useApp()
  const reel = useAppState(reelOf)
  const [showsAll, setShowsAll] = useState(false)
  const timecode = (at: number): string =>
    reel ? formatTimecode(reel.startCount + at, reel.rate, reel.isDropFrame) : String(at)
  const goTo = (at: number) => {
    setStep(store, 'rehearse')
    services.seek(frame(at))
  }
  const shown = showsAll ? frames : frames.slice(0, TOLD_AT_FIRST)
  return (
    <>
      <p>
        ▲ {frames.length === 1 ? 'A frame' : `${frames.length} frames`} that could not be decoded{' '}
        {frames.length === 1 ? 'shows' : 'show'} the one before:
      </p>
      <div className="button-row held-frames">
        {shown.map((at) => (
          <button type="button" className="link" key={at} onClick={() => goTo(at)}>
            {timecode(at)}
          </button>
        ))}
        {shown.length < frames.length && (
          <button type="button" className="button" onClick={() => setShowsAll(true)}>
            show {frames.length - shown.length} more
          </button>
        )}
      </div>
    </>
  )
}
