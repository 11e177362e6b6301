import { guideSeconds, guideSpeed } from '../core/film/guideTrack.ts'
import type { AppStore } from '../store/appStore.ts'
import { reelOf } from '../store/queries.ts'
import type { AppState } from '../store/state.ts'
import type { GuideSound } from './guideSound.ts'

/** Seconds that sound may lie off its picture before it is put right: about a frame. */
const MOST_OFF = 0.045

/** Milliseconds in which a player that was put right settles; sooner it is not judged. */
const SETTLES = 400

/** A player takes so long to begin, in seconds, at most: later it is not learned from. */
const MOST_LEAD = 0.5

/** The fastest a browser plays sound that can still be heard. */
const FASTEST = 4

/** How fast the sound is to run now; undefined: not at all. */
const wantedSpeed = (state: AppState): number | undefined => {
  const { playback, guiding } = state
  const reel = reelOf(state)
  const isWanted = playback.isPlaying && guiding.isHeard && guiding.name !== undefined
  if (!isWanted || !reel?.guide || playback.speed <= 0) return undefined
  const speed = guideSpeed(reel.guide, reel.rate) * playback.speed
  return speed <= FASTEST ? speed : undefined
}

/**
 * Runs the guide track with the picture: it begins with the first frame that is shown, and where it
 * comes to lie off by more than a frame it is put right, by as much sooner as it was late before.
 */
export const startGuidePlayer = (
  store: AppStore,
  sound: GuideSound,
  now: () => number = () => performance.now(),
): void => {
  let isRunning = false
  let placedAt = 0
  let lead = 0

  const place = (seconds: number, speed: number): void => {
    placedAt = now()
    isRunning = true
    sound.play(seconds + lead * speed, speed)
  }
  const stop = (): void => {
    if (isRunning) sound.pause()
    isRunning = false
  }
  store.subscribe((state, before) => {
    if (state.guiding.lowPass !== before.guiding.lowPass) sound.setLowPass(state.guiding.lowPass)
    const speed = wantedSpeed(state)
    const guide = reelOf(state)?.guide
    if (speed === undefined || !guide) return stop()
    const isShown = state.playhead !== before.playhead
    const isChanged = wantedSpeed(before) !== speed || reelOf(before)?.guide !== guide
    if (!isShown && !(isChanged && isRunning)) return
    const seconds = guideSeconds(guide, state.playhead)
    const long = state.guiding.facts?.seconds ?? Number.POSITIVE_INFINITY
    if (seconds < 0 || seconds >= long) return stop()
    if (!isRunning || isChanged) return place(seconds, speed)
    const off = sound.position() - seconds
    if (Math.abs(off) <= MOST_OFF || now() - placedAt < SETTLES) return
    if (Math.abs(off) < MOST_LEAD)
      lead = Math.min(MOST_LEAD, Math.max(-MOST_LEAD, lead - off / speed))
    place(seconds, speed)
  })
}
