import { expect, test } from 'vitest'
import { type CueLook, LOOK_LEVELS, LOOK_SIDE } from '../../src/core/census/cueLook.ts'
import { setGrade } from '../../src/core/job/commands/setGrade.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { censusKeyOf } from '../../src/store/checkKey.ts'
import { perform, showJob } from '../../src/store/document.ts'
import { NO_LOOKS, withLook } from '../../src/store/lookBook.ts'
import { alikeCues, reelLevels, selectAlike, setAlikeLimit } from '../../src/store/looks.ts'
import { cuesOf } from '../../src/store/queries.ts'
import { cueId, sampleJob } from '../support/sampleJob.ts'

/** A look of two boxes of colour: so much of the one, the rest of the other. */
const look = (part: number, pixels = 100): CueLook => {
  const spread = new Float32Array(LOOK_SIDE ** 3)
  spread[0] = part
  spread[LOOK_SIDE ** 3 - 1] = 1 - part
  const bins = () => {
    const levels = new Float32Array(LOOK_LEVELS)
    levels[10] = pixels
    return levels
  }
  return { pixels, levels: [bins(), bins(), bins(), bins()], spread }
}

const setUp = (parts: readonly (number | undefined)[]) => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  const know = (index: number, part: number) => {
    const state = store.getState()
    const cue = cuesOf(state)[index]
    const key = cue && censusKeyOf(state, cue)
    if (key === undefined) throw new Error('no cue')
    store.setState({ looks: withLook(state.looks, key, look(part)) })
  }
  for (const [index, part] of parts.entries()) if (part !== undefined) know(index, part)
  return { store, know, state: store.getState }
}

test('cues nearer than the limit, nearest first; what is not counted is told', () => {
  const { state } = setUp([1, 0.9, 0.95, undefined])
  const alike = alikeCues(state())
  expect(alike.near.map(({ cue }) => cue.id)).toEqual([cueId(3), cueId(2)])
  expect(alike.near[0]?.distance).toBeCloseTo(0.05, 6)
  expect(alike).toMatchObject({ isKnown: true, unknown: 1 })
})

test('the limit decides, and the nearest of all is told past it', () => {
  const { store, state } = setUp([1, 0.9, 0.95, 0])
  setAlikeLimit(store, 0.04)
  expect(alikeCues(state()).near).toEqual([])
  expect(alikeCues(state()).nearest?.cue.id).toBe(cueId(3))
  setAlikeLimit(store, 1.01)
  expect(alikeCues(state()).near).toHaveLength(3)
})

test('all alike are selected with the cue under the line', () => {
  const { store, state } = setUp([1, 0, 0.95, 0.9])
  expect(selectAlike(store)).toBe(2)
  expect(state().selection).toEqual([cueId(1), cueId(3), cueId(4)])
})

test('nothing is alike as long as the cue itself is not counted', () => {
  const { state } = setUp([undefined, 1, 1, 1])
  expect(alikeCues(state())).toMatchObject({ near: [], isKnown: false, unknown: 1 })
})

test('the levels of the reel are those of all cues that are known', () => {
  const { state, know } = setUp([undefined, undefined, undefined, undefined])
  expect(reelLevels(state())).toBeUndefined()
  know(0, 1)
  know(2, 0.5)
  const known = reelLevels(state())
  expect(known).toMatchObject({ cues: 2, of: 4 })
  expect(known?.levels[1][10]).toBe(200)
})

test('a change of grade leaves the levels of the reel the same object', () => {
  const { store, state } = setUp([1, 1, undefined, undefined])
  const before = reelLevels(state())
  perform(store, (job) => setGrade(job, [cueId(1)], (g) => ({ ...g, saturation: 0.5 })))
  expect(reelLevels(state())).toBe(before)
})

test('a book begun is not the empty one, and an old look goes for one too many', () => {
  let book = NO_LOOKS
  for (let i = 0; i < 24_001; i++) book = withLook(book, `cue ${i}`, look(1))
  expect(NO_LOOKS.entries.size).toBe(0)
  expect(book.entries.size).toBe(24_000)
  expect(book.entries.has('cue 0')).toBe(false)
})
