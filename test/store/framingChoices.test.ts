import { describe, expect, it } from 'vitest'
import { aperturePresets } from '../../src/core/framing/frameToAperture.ts'
import { openRatio } from '../../src/core/framing/openRatio.ts'
import { newHistory } from '../../src/core/job/history.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import { apertureFramingOf } from '../../src/store/apertureView.ts'
import { type AppStore, createAppStore } from '../../src/store/appStore.ts'
import { endGesture, undo } from '../../src/store/document.ts'
import { blankTo, frameTo, setSqueeze } from '../../src/store/framingChoices.ts'
import { changeFraming } from '../../src/store/grading.ts'
import { cuesOf } from '../../src/store/queries.ts'
import { selectAll } from '../../src/store/selection.ts'
import { movePlayhead } from '../../src/store/session.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

/** Four cues of a 16 : 9 scan, the second zoomed, the line on the first, all selected. */
const startStore = (): AppStore => {
  const store = createAppStore()
  const job = sampleJob(undefined, (cue, i) =>
    i === 1 ? { ...cue, framing: { ...IDENTITY_FRAMING, zoom: 2, blanking: 0.1 } } : cue,
  )
  store.setState({ history: newHistory(job), reelId: REEL_ID })
  movePlayhead(store, 0)
  selectAll(store)
  return store
}

const framings = (store: AppStore) => cuesOf(store.getState()).map(({ framing }) => framing)

describe('a choice of a named value', () => {
  it('is the same on every selected cue, also while trimming, and one undo step', () => {
    const store = startStore()
    expect(store.getState().isTrimming).toBe(true)
    blankTo(store, 1.85)
    for (const { blanking } of framings(store))
      expect(openRatio(blanking, 16 / 9)).toBeCloseTo(1.85, 9)
    expect(framings(store)[1]?.zoom).toBe(2)
    undo(store)
    expect(framings(store).map(({ blanking }) => blanking)).toEqual([0, 0.1, 0, 0])
    blankTo(store, undefined)
    expect(framings(store).map(({ blanking }) => blanking)).toEqual([0, 0, 0, 0])
    setSqueeze(store, 2)
    expect(framings(store).map(({ squeeze }) => squeeze)).toEqual([2, 2, 2, 2])
  })

  it('frames to an aperture of the film', () => {
    const store = startStore()
    const preset = aperturePresets('16mm')[0]
    if (!preset) throw new Error('16 mm has no presets')
    frameTo(store, preset)
    const [first, second] = framings(store)
    expect(first?.zoom).toBeGreaterThan(1)
    expect(second).toEqual(first)
  })
})

describe('the view of the whole scan', () => {
  it('stays as it is while the frame is dragged, and follows when the drag ends', () => {
    const store = startStore()
    const zoomOut = (zoom: number) =>
      changeFraming(store, 'zoom', (framing) => ({ ...framing, zoom }), 'drag 1')
    const before = apertureFramingOf(store.getState())
    zoomOut(0.5)
    zoomOut(0.25)
    expect(apertureFramingOf(store.getState())).toEqual(before)
    endGesture(store)
    expect(apertureFramingOf(store.getState()).zoom).toBeLessThan(before.zoom)
  })
})
