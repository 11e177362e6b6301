import { expect, test } from 'vitest'
import { startGuidePlayer } from '../../src/app/guidePlayer.ts'
import type { GuideSound } from '../../src/app/guideSound.ts'
import { frame } from '../../src/core/time/frame.ts'
import { rate } from '../../src/core/time/rate.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob } from '../../src/store/document.ts'
import { setGuiding } from '../../src/store/guiding.ts'
import { movePlayhead, setPlayback } from '../../src/store/session.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'

/** Sound made for 24 whose second 10 belongs to frame 48 of a reel at 25. */
const GUIDE = { name: 'a.wav', madeFor: rate(24), mark: { frame: 48, seconds: 10 } }

/** A player beside a clock that only the test moves on, and a sound that begins `late` seconds late. */
const setUp = (late = 0) => {
  const store = createAppStore()
  showJob(store, sampleJob([0], undefined, sampleReel({ guide: GUIDE })), 'shelf')
  setGuiding(store, { name: 'a.wav' })
  let clock = 0
  let begun: { at: number; seconds: number; speed: number } | undefined
  const calls: string[] = []
  const position = () => {
    if (!begun) return 0
    return begun.seconds + Math.max(0, clock - begun.at) * begun.speed
  }
  const sound: GuideSound = {
    ...{ open: () => {}, close: () => {}, setLowPass: (hz) => calls.push(`low-pass ${hz}`) },
    play: (seconds, speed) => {
      calls.push('play')
      begun = { at: clock + late, seconds, speed }
    },
    pause: () => calls.push('pause'),
    position,
  }
  startGuidePlayer(store, sound, () => clock * 1000)
  /** Shows so many frames, each at its time; returns how far off the sound is at the last. */
  const show = (count: number, speed = 1): number => {
    for (let i = 0; i < count; i++) {
      clock += 1 / 25
      movePlayhead(store, frame(store.getState().playhead + speed))
    }
    return position() - (10 + (store.getState().playhead - 48) / 24)
  }
  return { store, calls, show, speed: () => begun?.speed }
}

test('it begins with the first frame shown, at the speed of the picture', () => {
  const { store, calls, show, speed } = setUp()
  movePlayhead(store, frame(100))
  setPlayback(store, { isPlaying: true, speed: 1 })
  expect(calls).toEqual([])
  expect(Math.abs(show(50))).toBeLessThan(0.001)
  expect(calls).toEqual(['play'])
  expect(speed()).toBeCloseTo(25 / 24, 12)
  setPlayback(store, { isPlaying: false })
  expect(calls).toEqual(['play', 'pause'])
})

test('a player that begins late is put right, and begins sooner the next time', () => {
  const { store, calls, show } = setUp(0.2)
  movePlayhead(store, frame(100))
  setPlayback(store, { isPlaying: true, speed: 1 })
  show(5)
  expect(Math.abs(show(40))).toBeLessThan(0.045)
  expect(calls.filter((each) => each === 'play')).toHaveLength(2)
  setPlayback(store, { isPlaying: false })
  movePlayhead(store, frame(300))
  setPlayback(store, { isPlaying: true })
  show(20)
  expect(Math.abs(show(40))).toBeLessThan(0.045)
  expect(calls.filter((each) => each === 'play')).toHaveLength(3)
})

test('it is silent before its beginning, backwards, too fast, and where it is not to be heard', () => {
  const { store, calls, show } = setUp()
  setGuiding(store, { isHeard: false })
  setPlayback(store, { isPlaying: true, speed: 1 })
  show(5)
  setGuiding(store, { isHeard: true })
  setPlayback(store, { speed: -1 })
  show(2, -1)
  setPlayback(store, { speed: 8 })
  show(2, 8)
  expect(calls).toEqual([])
  setPlayback(store, { speed: 2 })
  show(2, 2)
  expect(calls).toEqual(['play'])
})

test('it goes along where the picture jumps, and where it is laid otherwise', () => {
  const { store, calls, show } = setUp()
  movePlayhead(store, frame(100))
  setPlayback(store, { isPlaying: true, speed: 1 })
  show(30)
  movePlayhead(store, frame(400))
  expect(Math.abs(show(5))).toBeLessThan(0.045)
  expect(calls).toEqual(['play', 'play'])
  setGuiding(store, { lowPass: 5000 })
  expect(calls).toEqual(['play', 'play', 'low-pass 5000'])
})
