import { describe, expect, it } from 'vitest'
import { withStageValue } from '../../src/core/colour/gradeColumns.ts'
import { newHistory } from '../../src/core/job/history.ts'
import type { Cue } from '../../src/core/job/job.ts'
import { frame } from '../../src/core/time/frame.ts'
import { type AppStore, createAppStore } from '../../src/store/appStore.ts'
import {
  carryFromPrevious,
  carryOn,
  copyValues,
  pasteValues,
  setCarried,
} from '../../src/store/carrying.ts'
import { endGesture, undo } from '../../src/store/document.ts'
import { changeGrade } from '../../src/store/grading.ts'
import { cuesOf } from '../../src/store/queries.ts'
import { aimedAt, selectCue, takeAim } from '../../src/store/selection.ts'
import { movePlayhead } from '../../src/store/session.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

/** Four cues; the second and the fourth are of one scene. */
const startStore = (): AppStore => {
  const store = createAppStore()
  const job = sampleJob([0, 100, 250, 400], (cue, i) => ({
    ...cue,
    scene: i % 2 === 1 ? '12' : '',
  }))
  store.setState({ history: newHistory(job), reelId: REEL_ID })
  movePlayhead(store, 100)
  return store
}

const cue = (store: AppStore, number: number): Cue => {
  const found = cuesOf(store.getState())[number - 1]
  if (!found) throw new Error(`the job has no cue ${number}`)
  return found
}

const gainOf = (store: AppStore, number: number): number => cue(store, number).grade.gain[0]

const setGain = (store: AppStore, value: number, gesture?: string): boolean =>
  changeGrade(store, 'gain R', (grade) => withStageValue(grade, 'gain', 0, value), gesture)

describe('carrying', () => {
  it('goes to the next cue, to the scene, and comes from the cue before, in one undo step each', () => {
    const store = startStore()
    setGain(store, 0.8)
    carryOn(store, 'next')
    expect(gainOf(store, 3)).toBe(0.8)
    undo(store)
    expect(gainOf(store, 3)).toBe(1)
    carryOn(store, 'scene')
    expect([1, 3, 4].map((number) => gainOf(store, number))).toEqual([1, 1, 0.8])
    movePlayhead(store, 250)
    carryFromPrevious(store)
    expect(gainOf(store, 3)).toBe(0.8)
  })

  it('pastes the parts that are chosen on all cues selected', () => {
    const store = startStore()
    setGain(store, 0.8)
    changeGrade(store, 'saturation', (grade) => ({ ...grade, saturation: 0.5 }))
    copyValues(store)
    setCarried(store, 'saturation', false)
    movePlayhead(store, 250)
    selectCue(store, cue(store, 4), 'toggle')
    pasteValues(store)
    for (const number of [3, 4]) {
      expect(gainOf(store, number)).toBe(0.8)
      expect(cue(store, number).grade.saturation).toBe(1)
    }
  })
})

describe('a change to several cues', () => {
  it('trims: each keeps its differences; or sets all alike', () => {
    const store = startStore()
    setGain(store, 0.8)
    selectCue(store, cue(store, 3), 'toggle')
    expect(store.getState().isTrimming).toBe(true)
    setGain(store, 0.9)
    expect([2, 3].map((number) => gainOf(store, number))).toEqual([0.9, 1.1])
    store.setState({ isTrimming: false })
    setGain(store, 0.7)
    expect([2, 3].map((number) => gainOf(store, number))).toEqual([0.7, 0.7])
  })

  it('is one undo step as long as a drag goes on, and says so while it does', () => {
    const store = startStore()
    for (const value of [0.9, 0.8, 0.7]) setGain(store, value, 'gain R 1')
    expect(store.getState().gesture).toBe('gain R 1')
    endGesture(store)
    expect(store.getState().gesture).toBeUndefined()
    expect(store.getState().history?.past).toHaveLength(1)
  })
})

describe('what is begun on a cue', () => {
  it('goes to that cue when it is typed to its end, wherever the line is then', () => {
    const store = startStore()
    const aim = takeAim(store)
    movePlayhead(store, 250)
    aimedAt(store, aim, () => setGain(store, 0.8))
    setGain(store, 0.9)
    expect([2, 3].map((number) => gainOf(store, number))).toEqual([0.8, 0.9])
  })

  it('stays on that cue when a drag goes over a cut in play', () => {
    const store = startStore()
    setGain(store, 0.8, 'drag 1')
    movePlayhead(store, 250)
    expect(setGain(store, 0.7, 'drag 1')).toBe(false)
    endGesture(store)
    setGain(store, 0.9, 'drag 2')
    expect([2, 3].map((number) => gainOf(store, number))).toEqual([0.8, 0.9])
  })
})

describe('changes made while playing', () => {
  it('are kept on the cue in play, one after the other', () => {
    const store = startStore()
    store.setState({ playback: { ...store.getState().playback, isPlaying: true } })
    movePlayhead(store, frame(110))
    setGain(store, 0.9)
    movePlayhead(store, frame(260))
    setGain(store, 1.2)
    expect([1, 2, 3, 4].map((number) => gainOf(store, number))).toEqual([1, 0.9, 1.2, 1])
  })
})
