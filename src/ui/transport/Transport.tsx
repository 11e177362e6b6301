import { cueIndex, cuesOf, currentCue, reelOf } from '../../store/queries.ts'
import { standingOf } from '../../store/standing.ts'
import type { AppState } from '../../store/state.ts'
import { useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { paceText } from '../parts/paceText.ts'
import { Position } from './Position.tsx'

/** How the reel stands, as one text so that it is only drawn when it changes. */
const summary = (state: AppState): string => {
  const cues = cuesOf(state)
  const cue = currentCue(state)
  const { measured, outside, doubtful } = standingOf(state)
  const parts = [`cue ${cue ? cueIndex(cues, cue) + 1 : 0} of ${cues.length}`]
  if (measured < cues.length) parts.push(`${measured} measured`)
  parts.push(`${outside} outside tolerance`)
  if (doubtful > 0) parts.push(`${doubtful} doubtful`)
  return parts.join(' · ')
}

/** How far a ramp has gone where the line is in one. */
const rampText = (state: AppState): string => {
  const cue = currentCue(state)
  const step = cue ? state.playhead - cue.first : 0
  return cue && cue.first > 0 && step < cue.ramp ? `in the ramp, ${step + 1} of ${cue.ramp}` : ''
}

/** The foot of the screen: play, where the line is, and how the reel stands. */
export const Transport = () => {
  const { isPlaying, speed, isLooping, isTicking, late } = useAppState((state) => state.playback)
  const reel = useAppState(reelOf)
  const standing = useAppState(summary)
  const ramp = useAppState(rampText)
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
      <Position />
      {ramp && <span title="values are on their way from the cue before">{ramp}</span>}
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
