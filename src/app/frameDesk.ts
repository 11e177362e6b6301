import { codingOf } from '../core/job/codingOf.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import type { AppStore } from '../store/appStore.ts'
import { reelOf } from '../store/queries.ts'
import { movePlayhead, setPlayback } from '../store/session.ts'
import type { ShownFrame } from '../ui/services.ts'
import type { PlayedFrame } from '../work/playRange.ts'
import { createFeed, type Source } from './feed.ts'
import { onCodingChange } from './onCodingChange.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** Brings the frame under the line to the screen; while one is read only the latest waits. */
export type FrameDesk = {
  readonly frames: Source<ShownFrame>
  readonly seek: (wanted: number) => void
  readonly show: (played: PlayedFrame) => void
}

export const createFrameDesk = (
  store: AppStore,
  workers: Workers,
  pause: () => void,
): FrameDesk => {
  const frames = createFeed<ShownFrame>()
  let isReading = false
  let waiting: Frame | undefined

  const show = ({ frame: shown, planes }: PlayedFrame): void => {
    const reel = reelOf(store.getState())
    if (reel) frames.put({ frame: shown, planes, coding: codingOf(reel) })
  }
  const read = async (wanted: Frame): Promise<void> => {
    isReading = true
    try {
      const planes = await workers.screen('read', wanted)
      if (!store.getState().playback.isPlaying) show({ frame: wanted, planes })
    } catch (error) {
      // While another scan is opened, a frame of the one before is wanted no more.
      if (store.getState().media === 'ready') tellError(store, error)
    } finally {
      isReading = false
      const next = waiting
      waiting = undefined
      if (next !== undefined) void read(next)
    }
  }
  onCodingChange(store, (coding) => {
    const shown = frames.current()
    if (shown) frames.put({ ...shown, coding })
  })
  return {
    frames,
    show,
    seek: (wanted) => {
      if (store.getState().playback.isPlaying) pause()
      setPlayback(store, { late: 0 })
      const target = frame(movePlayhead(store, wanted))
      if (store.getState().media !== 'ready') return
      if (isReading) waiting = target
      else void read(target)
    },
  }
}
