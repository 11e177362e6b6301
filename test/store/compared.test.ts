import { describe, expect, it } from 'vitest'
import type { Grade } from '../../src/core/colour/grade.ts'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import { frame } from '../../src/core/time/frame.ts'
import { type AppStore, createAppStore } from '../../src/store/appStore.ts'
import { comparedAt, gradedWord, picturesShown } from '../../src/store/compared.ts'
import {
  addStill,
  comparable,
  compareWithNext,
  dropHeldFrame,
  dropStill,
  heldOfReel,
  holdHere,
  renameHeldFrame,
  toggleArrangement,
} from '../../src/store/comparing.ts'
import { showJob, undo } from '../../src/store/document.ts'
import { offerProposal } from '../../src/store/proposal.ts'
import { movePlayhead, setView } from '../../src/store/session.ts'
import { shownValuesAt } from '../../src/store/shownValues.ts'
import { cueId, sampleJob } from '../support/sampleJob.ts'

const saturated = (saturation: number): Grade => ({ ...IDENTITY_GRADE, saturation })

/** Cue 2 (from frame 100) has two alternates, cue 3 (from 250) a ramp of three frames. */
const opened = (): AppStore => {
  const store = createAppStore()
  const job = sampleJob(undefined, (cue, index) => ({
    ...cue,
    ramp: index === 2 ? 3 : 0,
    grade: saturated(1 + index / 10),
    framing: { ...IDENTITY_FRAMING, zoom: 1 + index / 10 },
    ...(index === 1 && {
      gradeName: 'C',
      alternates: [
        { name: 'A', grade: saturated(2) },
        { name: 'B', grade: saturated(3) },
      ],
    }),
  }))
  showJob(store, job, 'key')
  movePlayhead(store, 120)
  return store
}

const words = (store: AppStore): readonly string[] => picturesShown(store.getState())

describe('what the graded picture is compared with', () => {
  it('is nothing while it stands alone, nor while the scan is shown whole', () => {
    const store = opened()
    expect(words(store)).toEqual(['C · in force'])
    for (const change of [{ isPeeking: true }, { showsAperture: true }]) {
      setView(store, { arrangement: 'wipe', ...change })
      expect(words(store)).toHaveLength(1)
      setView(store, { isPeeking: false, showsAperture: false })
    }
    expect(words(store)).toEqual(['scanned', 'C · in force'])
  })

  it('is the scan, framed as the graded picture is, without marks', () => {
    const store = opened()
    setView(store, { arrangement: 'difference' })
    expect(comparedAt(store.getState(), frame(120))).toEqual([
      {
        word: 'scanned',
        of: 'frame',
        grade: IDENTITY_GRADE,
        framing: { ...IDENTITY_FRAMING, zoom: 1.1 },
        isDeliverable: false,
      },
    ])
  })

  it('are all alternates side by side, the first of them by a wipe, one where one is chosen', () => {
    const store = opened()
    setView(store, { arrangement: 'side-by-side', against: { kind: 'alternates' } })
    expect(words(store)).toEqual(['A', 'B', 'C · in force'])
    expect(comparedAt(store.getState(), frame(120)).map(({ grade }) => grade.saturation)).toEqual([
      2, 3,
    ])
    toggleArrangement(store, 'wipe')
    expect(words(store)).toEqual(['A', 'C · in force'])
    setView(store, { against: { kind: 'alternate', index: 1 } })
    expect(words(store)).toEqual(['B', 'C · in force'])
    setView(store, { against: { kind: 'alternate', index: 2 } })
    expect(words(store)).toEqual(['C · in force'])
  })

  it('is a held frame as it was graded when it was held, by its name, until it is dropped', () => {
    const store = opened()
    holdHere(store)
    setView(store, { arrangement: 'wipe' })
    movePlayhead(store, 300)
    const [held] = heldOfReel(store.getState())
    if (!held) throw new Error('nothing is held')
    expect(words(store)).toEqual(['cue 2, 10:00:04:20', 'graded'])
    expect(comparedAt(store.getState(), frame(300))).toMatchObject([
      { of: held.id, grade: { saturation: 1.1 }, framing: { zoom: 1.1 } },
    ])
    expect(renameHeldFrame(store, held.id, 'harbour')).toBe(true)
    expect(words(store)[0]).toBe('harbour')
    dropHeldFrame(store, held.id)
    expect(words(store)).toEqual(['scanned', 'graded'])
    undo(store)
    expect(heldOfReel(store.getState()).map(({ name }) => name)).toEqual(['harbour'])
  })

  it('is a still opened for this session, as it is', () => {
    const store = opened()
    const id = 'held-still' as Parameters<typeof addStill>[1]
    addStill(store, id, 'chart.png')
    expect(words(store)).toEqual(['chart.png', 'C · in force'])
    expect(comparedAt(store.getState(), frame(120))).toMatchObject([
      { of: id, grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING },
    ])
    expect(store.getState().history?.past).toHaveLength(0)
    dropStill(store, id)
    expect(words(store)[0]).toBe('scanned')
  })

  it('goes round through all there is', () => {
    const store = opened()
    holdHere(store)
    const all = comparable(store.getState())
    expect(all.map(({ kind }) => kind)).toEqual([
      'scanned',
      'alternates',
      'alternate',
      'alternate',
      'held',
    ])
    setView(store, { against: { kind: 'scanned' } })
    for (const wanted of [...all.slice(1), all[0]]) {
      compareWithNext(store)
      expect(store.getState().view.against).toEqual(wanted)
    }
  })
})

describe('what a frame is shown with', () => {
  it('is the grade that is proposed for its cue, and a ramp leads to it and from it', () => {
    const store = opened()
    const at = (n: number) => shownValuesAt(store.getState(), frame(n))?.grade.saturation
    expect(at(120)).toBe(1.1)
    const propose = (n: number, saturation: number) =>
      offerProposal(store, {
        label: 'Match',
        says: [],
        change: { kind: 'grade', cue: cueId(n), grade: saturated(saturation) },
      })
    propose(2, 2)
    expect(at(120)).toBe(2)
    expect(at(99)).toBe(1)
    expect(at(251)).toBeCloseTo(1.6, 12)
    propose(3, 3.1)
    expect(at(251)).toBeCloseTo(2.1, 12)
    expect(at(253)).toBe(3.1)
    expect(store.getState().history?.job.cues[cueId(3)]?.grade.saturation).toBe(1.2)
  })

  it('is told by name where the cue has one', () => {
    const store = opened()
    expect(gradedWord(store.getState(), frame(120))).toBe('C · in force')
    expect(gradedWord(store.getState(), frame(300))).toBe('graded')
  })
})
