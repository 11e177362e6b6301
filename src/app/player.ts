import { frame } from '../core/time/frame.ts'
import { framesPerSecond } from '../core/time/rate.ts'
import type { AppStore } from '../store/appStore.ts'
import { cuesOf, currentCue, endOfCue, isCueBetween, reelOf } from '../store/queries.ts'
import { movePlayhead, setPlayback } from '../store/session.ts'
import type { PlayedFrame, PlayPlan } from '../work/playRange.ts'
import { tellError } from './tellError.ts'
import type { Tick } from './tick.ts'
import type { Workers } from './workers.ts'

/** Frames asked for ahead of the one on screen. */
const AHEAD = 8

export type Player = { readonly play: (speed: number) => void; readonly pause: () => void }

/** What is played for a speed: the loop of the cue, or the rest of the reel. */
const planFor = (store: AppStore, speed: number): PlayPlan | undefined => {
  const state = store.getState()
  const reel = reelOf(state)
  if (!reel) return undefined
  const cue = currentCue(state)
  const isLoop = state.playback.isLooping && cue !== undefined
  const first = isLoop ? cue.first : frame(0)
  const end = isLoop ? endOfCue(cuesOf(state), cue, reel) : frame(reel.frames)
  const isAtEnd = speed > 0 ? state.playhead >= end - 1 : state.playhead <= first
  const restart = speed > 0 ? first : frame(end - 1)
  const from = isAtEnd ? restart : state.playhead
  return { from, step: speed, first, end, isLoop }
}

/**
 * Plays frames to a clock: each is shown when its time comes, and one whose time has passed when
 * it arrives is left out and counted. The frame's own number decides what grade it is drawn with.
 */
export const createPlayer = (
  store: AppStore,
  workers: Workers,
  show: (played: PlayedFrame) => void,
  tick: Tick,
): Player => {
  let run = 0

  const pause = (): void => {
    if (!store.getState().playback.isPlaying) return
    run++
    setPlayback(store, { isPlaying: false })
    void workers.screen('stop', undefined).catch(() => undefined)
  }

  const play = (speed: number): void => {
    const plan = planFor(store, speed)
    const reel = reelOf(store.getState())
    if (!plan || !reel || store.getState().media !== 'ready') return
    const mine = ++run
    const isMine = () => run === mine
    setPlayback(store, { isPlaying: true, speed, late: 0 })
    const interval = 1000 / framesPerSecond(reel.rate)
    const ready: PlayedFrame[] = []
    let asked = 0
    let isEnded = false
    let shown = -1
    let base = 0
    let begun: number | undefined
    let last = plan.from

    const ask = async (): Promise<void> => {
      asked++
      try {
        const next = await workers.screen('playNext', undefined)
        if (!isMine()) return
        if (next) ready.push(next)
        else isEnded = true
      } catch (error) {
        if (!isMine()) return
        tellError(store, error)
        isEnded = true
      } finally {
        asked--
      }
    }
    const fill = (): void => {
      while (!isEnded && asked + ready.length < AHEAD) void ask()
    }
    const showNext = (played: PlayedFrame): void => {
      const isFirstOfRun = shown < 0
      if (
        store.getState().playback.isTicking &&
        (isFirstOfRun || isCueBetween(store.getState(), last, played.frame))
      )
        tick()
      last = played.frame
      movePlayhead(store, played.frame)
      show(played)
    }
    const turn = (now: number): void => {
      if (!isMine()) return
      fill()
      if (begun === undefined && (ready.length >= AHEAD / 2 || isEnded)) begun = now
      if (begun !== undefined) {
        const due = Math.floor((now - begun) / interval)
        let late = 0
        while (ready.length > 1 && shown + 1 < due) {
          ready.shift()
          shown++
          late++
        }
        if (late > 0) {
          base += late
          setPlayback(store, { late: base })
        }
        const next = shown + 1 <= due ? ready.shift() : undefined
        if (next) {
          shown++
          showNext(next)
        }
      }
      if (isEnded && ready.length === 0) {
        pause()
        return
      }
      requestAnimationFrame(turn)
    }
    workers
      .screen('play', plan)
      .then(() => {
        if (isMine()) requestAnimationFrame(turn)
      })
      .catch((error) => {
        tellError(store, error)
        pause()
      })
  }
  return { play, pause }
}
