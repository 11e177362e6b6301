import { formatFootage } from '../../core/time/footage.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { verdictOf } from '../../store/checkKey.ts'
import { cueIndex, cuesOf, currentCue, isDoubtful, reelOf } from '../../store/queries.ts'
import type { AppState } from '../../store/state.ts'
import { useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { paceText } from '../parts/paceText.ts'

/** Counts for the line at the foot, as one text so that it is only drawn when it changes. */
const summary = (state: AppState): string => {
  const cues = cuesOf(state)
  const cue = currentCue(state)
  let outside = 0
  let measured = 0
  let doubtful = 0
  for (const each of cues) {
    const verdict = verdictOf(state, each)
    if (verdict) measured++
    if (verdict?.isInside === false) outside++
    if (isDoubtful(each)) doubtful++
  }
  const parts = [`cue ${cue ? cueIndex(cues, cue) + 1 : 0} of ${cues.length}`]
  if (measured < cues.length) parts.push(`${measured} measured`)
  parts.push(`${outside} outside tolerance`)
  if (doubtful > 0) parts.push(`${doubtful} doubtful`)
  return parts.join(' · ')
}

/** The foot of the screen: play, where the line is, and how the reel stands. */
export const Transport = () => {
  const { isPlaying, speed, isLooping, isTicking, late } = useAppState((state) => state.playback)
  const playhead = useAppState((state) => state.playhead)
  const reel = useAppState(reelOf)
  const standing = useAppState(summary)
  const checking = useAppState((state) => state.checking)
  if (!reel) return null
  return (
    <footer className="transport">
      <div className="button-row">
        <CommandButton isTerse id="cue-back" label="◁ cue" />
        <CommandButton isTerse id="shuttle-back" label="◀◀" />
        <CommandButton id="play" label={isPlaying ? 'Pause' : 'Play'} className="play" />
        <CommandButton isTerse id="shuttle-on" label="▶▶" />
        <CommandButton isTerse id="cue-on" label="cue ▷" />
      </div>
      <span className="timecode" role="timer" aria-label="Timecode" aria-live="off">
        {formatTimecode(reel.startCount + playhead, reel.rate, reel.isDropFrame)}
      </span>
      <span className="dim">{formatFootage(playhead, reel.gauge)}</span>
      <CommandButton isTerse id="loop" label="Loop cue" isPressed={isLooping} />
      <CommandButton isTerse id="tick" label="Tick" isPressed={isTicking} />
      {isPlaying && speed !== 1 && <span>{speed > 0 ? `${speed}×` : `−${-speed}×`}</span>}
      {late > 0 && <span title="Frames that came too late and were left out">{late} late</span>}
      <span className="spacer" />
      {checking && <span className="dim">{paceText('measuring', checking)}</span>}
      <span>{standing}</span>
    </footer>
  )
}
