import { framesPerSecond } from '../../core/time/rate.ts'
import { cueIndex, cuesOf, currentCue, reelOf, settledFrame } from '../../store/queries.ts'
import { movePlayhead, setPlayback } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import type { App } from '../appContext.ts'
import type { Command } from './command.ts'

const hasMedia = (state: AppState): boolean => state.media === 'ready'

const hasJob = (state: AppState): boolean => state.history !== undefined

const step = (app: App, frames: number): void => {
  app.services.pause()
  app.services.seek(app.store.getState().playhead + frames)
}

const stepCue = (app: App, direction: 1 | -1): void => {
  const state = app.store.getState()
  const cues = cuesOf(state)
  const cue = currentCue(state)
  if (!cue) return
  const index = cueIndex(cues, cue)
  const isInside = direction < 0 && state.playhead > settledFrame(state, cue)
  const target = cues[isInside ? index : index + direction]
  if (target) app.services.seek(settledFrame(state, target))
}

/** Shuttle speeds; each press goes one further in its direction. */
const SPEEDS = [1, 2, 4, 8] as const

const shuttle = (app: App, direction: 1 | -1): void => {
  const { isPlaying, speed } = app.store.getState().playback
  const now = isPlaying && Math.sign(speed) === direction ? Math.abs(speed) : 0
  const next = SPEEDS.find((candidate) => candidate > now) ?? 8
  app.services.play(direction * next)
}

const oneSecond = (app: App): number => {
  const reel = reelOf(app.store.getState())
  return reel ? Math.round(framesPerSecond(reel.rate)) : 25
}

export const PLAY_COMMANDS: readonly Command[] = [
  {
    id: 'play',
    label: 'Play or pause',
    group: 'Play',
    isPossible: hasMedia,
    run: (app) =>
      app.store.getState().playback.isPlaying ? app.services.pause() : app.services.play(1),
  },
  {
    id: 'step-back',
    label: 'One frame back',
    group: 'Play',
    isPossible: hasMedia,
    run: (app) => step(app, -1),
  },
  {
    id: 'step-on',
    label: 'One frame on',
    group: 'Play',
    isPossible: hasMedia,
    run: (app) => step(app, 1),
  },
  {
    id: 'second-back',
    label: 'One second back',
    group: 'Play',
    isPossible: hasMedia,
    run: (app) => step(app, -oneSecond(app)),
  },
  {
    id: 'second-on',
    label: 'One second on',
    group: 'Play',
    isPossible: hasMedia,
    run: (app) => step(app, oneSecond(app)),
  },
  {
    id: 'cue-back',
    label: 'Previous cue',
    group: 'Play',
    isPossible: hasJob,
    run: (app) => stepCue(app, -1),
  },
  {
    id: 'cue-on',
    label: 'Next cue',
    group: 'Play',
    isPossible: hasJob,
    run: (app) => stepCue(app, 1),
  },
  {
    id: 'shuttle-back',
    label: 'Shuttle back, faster each time',
    group: 'Play',
    isPossible: hasMedia,
    run: (app) => shuttle(app, -1),
  },
  {
    id: 'shuttle-on',
    label: 'Shuttle on, faster each time',
    group: 'Play',
    isPossible: hasMedia,
    run: (app) => shuttle(app, 1),
  },
  {
    id: 'loop',
    label: 'Loop the cue',
    group: 'Play',
    isPossible: hasMedia,
    run: ({ store, services }) => {
      const { isLooping, isPlaying, speed } = store.getState().playback
      setPlayback(store, { isLooping: !isLooping })
      if (isPlaying) services.play(speed)
    },
  },
  {
    id: 'tick',
    label: 'Tick on each cue',
    group: 'Play',
    isPossible: hasMedia,
    run: ({ store }) => setPlayback(store, { isTicking: !store.getState().playback.isTicking }),
  },
  {
    id: 'first-frame',
    label: 'First frame of the reel',
    group: 'Play',
    isPossible: hasJob,
    run: ({ store, services }) => services.seek(movePlayhead(store, 0)),
  },
  {
    id: 'last-frame',
    label: 'Last frame of the reel',
    group: 'Play',
    isPossible: hasJob,
    run: ({ store, services }) => services.seek(movePlayhead(store, Number.MAX_SAFE_INTEGER)),
  },
]
