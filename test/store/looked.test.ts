import { expect, test } from 'vitest'
import { splitCue } from '../../src/core/job/commands/splitCue.ts'
import { frame } from '../../src/core/time/frame.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { perform, showJob } from '../../src/store/document.ts'
import { lookedInJob, noteLooked, recallLooked } from '../../src/store/looked.ts'
import { movePlayhead, setPlayback } from '../../src/store/session.ts'
import { standingOf } from '../../src/store/standing.ts'
import { cueId, REEL_ID, sampleJob } from '../support/sampleJob.ts'

const setUp = () => {
  const store = createAppStore()
  noteLooked(store)
  showJob(store, sampleJob(), 'shelf')
  const looked = () => [...store.getState().looked]
  return { store, looked }
}

test('a cue is looked at when its picture comes under the line', () => {
  const { store, looked } = setUp()
  expect(looked()).toEqual([])
  store.setState({ media: 'ready' })
  movePlayhead(store, 260)
  movePlayhead(store, 270)
  expect(looked()).toEqual([cueId(1), cueId(3)])
  expect(standingOf(store.getState()).unlooked).toBe(2)
})

test('what races past is not looked at, but where it stops is', () => {
  const { store, looked } = setUp()
  store.setState({ media: 'ready' })
  setPlayback(store, { isPlaying: true, speed: 4 })
  movePlayhead(store, 120)
  movePlayhead(store, 300)
  expect(looked()).toEqual([cueId(1)])
  setPlayback(store, { isPlaying: false })
  expect(looked()).toEqual([cueId(1), cueId(3)])
  setPlayback(store, { isPlaying: true, speed: -1 })
  movePlayhead(store, 110)
  expect(looked()).toContain(cueId(2))
})

test('a cue split off under the line is looked at', () => {
  const { store, looked } = setUp()
  store.setState({ media: 'ready' })
  movePlayhead(store, 50)
  perform(store, (job) => splitCue(job, REEL_ID, frame(50), cueId(9)))
  expect(looked()).toEqual([cueId(1), cueId(9)])
})

test('what was looked at before is recalled as far as it is in the job, and kept likewise', () => {
  const { store } = setUp()
  recallLooked(store, [cueId(2), cueId(77)])
  expect([...store.getState().looked]).toEqual([cueId(2)])
  store.setState({ looked: new Set([cueId(2), cueId(77)]) })
  expect(lookedInJob(store.getState())).toEqual([cueId(2)])
})
