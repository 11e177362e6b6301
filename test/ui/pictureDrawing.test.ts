import { describe, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { codingOf } from '../../src/core/job/codingOf.ts'
import type { HeldId } from '../../src/core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Planes } from '../../src/core/picture/planes.ts'
import { tileLayout } from '../../src/core/picture/tileLayout.ts'
import { frame } from '../../src/core/time/frame.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { heldOfReel, holdHere } from '../../src/store/comparing.ts'
import { showJob } from '../../src/store/document.ts'
import { offerProposal } from '../../src/store/proposal.ts'
import { reelOf } from '../../src/store/queries.ts'
import { movePlayhead, setPlayback, setView } from '../../src/store/session.ts'
import { drawingOf } from '../../src/ui/bench/pictureDrawing.ts'
import type { PlacedStill, ShownFrame } from '../../src/ui/services.ts'
import { cueId, REEL_ID, sampleJob } from '../support/sampleJob.ts'

const planesOf = (): Planes => ({
  width: 2,
  height: 1,
  layout: 'rgb',
  depth: 8,
  samples: [new Uint8Array(2), new Uint8Array(2), new Uint8Array(2)],
})

const stillAt = (at: number): PlacedStill => ({
  frame: frame(at),
  still: { width: 4, height: 3, rgb: new Uint16Array(36).fill(502) },
})

/** The line on `at`, the frame `shown` on screen. */
const opened = (at: number, shown = at) => {
  const store = createAppStore()
  const job = sampleJob(undefined, (cue, index) => ({
    ...cue,
    grade: { ...IDENTITY_GRADE, saturation: 1 + index / 10 },
    framing: { ...IDENTITY_FRAMING, zoom: 1 + index / 10 },
    ...(index === 1 && { alternates: [{ name: 'A', grade: IDENTITY_GRADE }] }),
  }))
  showJob(store, job, 'key')
  store.setState({ media: 'ready' })
  movePlayhead(store, at)
  const reel = reelOf(store.getState())
  if (!reel) throw new Error('no reel')
  const current: ShownFrame = { frame: frame(shown), planes: planesOf(), coding: codingOf(reel) }
  const near: { still: PlacedStill | undefined } = { still: undefined }
  const held = new Map<HeldId, ShownFrame>()
  const asked: HeldId[] = []
  const silent = () => () => undefined
  const services = {
    frames: { current: () => current, subscribe: silent },
    stills: {
      get: () => undefined,
      nearest: () => near.still,
      request: () => undefined,
      subscribe: silent,
    },
    held: {
      get: (id: HeldId) => held.get(id),
      request: (id: HeldId) => void asked.push(id),
      subscribe: silent,
    },
  }
  const draw = (tiles = 1) => {
    const { areas } = tileLayout(tiles, 16 / 9, { width: 800, height: 450 }, 8)
    const drawing = drawingOf(store.getState(), services, areas)
    if (!drawing) throw new Error('nothing is drawn')
    return drawing
  }
  return { store, current, near, held, asked, draw }
}

describe('the picture on screen', () => {
  it('is the frame under the line, graded and framed, and that is what is measured', () => {
    const { current, draw } = opened(120)
    const { planes, view, measured } = draw()
    expect(planes).toBe(current.planes)
    expect(view).toMatchObject({ grade: { saturation: 1.1 }, framing: { zoom: 1.1 } })
    expect(view.compare).toEqual({ kind: 'none' })
    expect(measured).toMatchObject({ grade: { saturation: 1.1 }, framing: { zoom: 1.1 } })
  })

  it('is the scan, whole and without marks, while it is peeked at; measured is what is graded', () => {
    const { store, draw } = opened(120)
    setView(store, { isPeeking: true, arrangement: 'wipe', showsExcursions: true })
    const { view, measured } = draw()
    expect(view).toMatchObject({ grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING })
    expect(view).toMatchObject({ compare: { kind: 'none' }, excursions: null })
    expect(measured?.grade.saturation).toBe(1.1)
  })

  it('is the whole scan, graded, in the aperture view; measured as it is delivered', () => {
    const { store, draw } = opened(120)
    setView(store, { showsAperture: true, arrangement: 'wipe' })
    const { view, measured } = draw()
    expect(view.framing.zoom).toBeLessThan(1)
    expect(view.grade.saturation).toBe(1.1)
    expect(view.compare.kind).toBe('none')
    expect(measured?.framing.zoom).toBe(1.1)
  })

  it('shows a grade that is proposed, and a base', () => {
    const { store, draw } = opened(120)
    const grade = { ...IDENTITY_GRADE, saturation: 3 }
    const told = { label: 'Match', says: [] }
    offerProposal(store, { ...told, change: { kind: 'grade', cue: cueId(2), grade } })
    expect(draw()).toMatchObject({ view: { grade }, measured: { grade } })
    const base = { ...PRINT_BASE, scan: 'negative' } as const
    offerProposal(store, { ...told, change: { kind: 'base', reel: REEL_ID, base } })
    expect(draw().coding.base).toEqual(base)
    expect(draw().view.grade.saturation).toBe(1.1)
  })

  it('is moving while it plays and while something is dragged', () => {
    const { store, draw } = opened(120)
    expect(draw().view.isMoving).toBe(false)
    setPlayback(store, { isPlaying: true })
    expect(draw().view.isMoving).toBe(true)
    setPlayback(store, { isPlaying: false })
    store.setState({ gesture: 'gain 1' })
    expect(draw().view.isMoving).toBe(true)
  })
})

describe('what stands in until the frame under the line is there', () => {
  it('is a small still of it, with its own values, unmarked and unmeasured', () => {
    const { store, near, draw } = opened(300, 20)
    near.still = stillAt(310)
    setView(store, { showsExcursions: true })
    const { planes, coding, view, measured } = draw()
    expect(planes).toMatchObject({ width: 4, height: 3, depth: 10, layout: 'rgb' })
    expect(coding.range).toBe('narrow')
    expect(((coding.pixelAspect ?? 1) * 4) / 3).toBeCloseTo(16 / 9, 12)
    expect(view).toMatchObject({ grade: { saturation: 1.2 }, excursions: null })
    expect(measured).toBeUndefined()
  })

  it.each([
    ['a frame just before is better', 130, 120, 129, false],
    ['a still of the same cue that is nearer', 200, 110, 190, true],
    ['a still that is further off than the frame before', 200, 180, 150, false],
    ['a still where the frame before is of another cue', 101, 99, 140, true],
    ['none', 200, 110, undefined, false],
  ])('%s', (_, line, shown, still, isStill) => {
    const { near, current, draw } = opened(line, shown)
    near.still = still === undefined ? undefined : stillAt(still)
    expect(draw().planes !== current.planes).toBe(isStill)
  })

  it('is never a still while it plays', () => {
    const { store, near, current, draw } = opened(300, 20)
    near.still = stillAt(300)
    setPlayback(store, { isPlaying: true })
    expect(draw().planes).toBe(current.planes)
  })
})

describe('pictures that are compared', () => {
  it('are the same frame under other grades, marked where they could be delivered', () => {
    const { store, current, draw } = opened(120)
    setView(store, { arrangement: 'wipe', wipeAt: 0.3 })
    expect(draw().view.compare).toMatchObject({
      kind: 'wipe',
      at: 0.3,
      other: { planes: current.planes, grade: IDENTITY_GRADE, isMarked: false },
    })
    setView(store, { against: { kind: 'alternates' }, arrangement: 'side-by-side' })
    const { compare } = draw(2).view
    if (compare.kind !== 'tiles') throw new Error(compare.kind)
    expect(compare.others).toHaveLength(1)
    expect(compare.others[0]).toMatchObject({ side: { isMarked: true }, area: { left: 0 } })
    expect(compare.main.left).toBeGreaterThan(0.5)
  })

  it('with a held frame wait for it: it is asked for and left out until it is there', () => {
    const { store, current, held, asked, draw } = opened(120)
    holdHere(store)
    const [one] = heldOfReel(store.getState())
    if (!one) throw new Error('nothing is held')
    setView(store, { arrangement: 'difference' })
    movePlayhead(store, 300)
    expect(draw().view.compare).toEqual({ kind: 'none' })
    expect(asked).toEqual([one.id])
    const kept = { ...current, planes: planesOf() }
    held.set(one.id, kept)
    const { compare } = draw().view
    expect(compare.kind).toBe('difference')
    if (compare.kind !== 'difference') return
    expect(compare.other.planes).toBe(kept.planes)
    expect(compare.other).toMatchObject({ grade: { saturation: 1.1 }, framing: { zoom: 1.1 } })
  })
})
