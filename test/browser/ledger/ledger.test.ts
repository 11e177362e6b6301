import { createElement } from 'react'
import { createRoot, type Root } from 'react-dom/client'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { userEvent } from 'vitest/browser'
import { setAgreement } from '../../../src/core/job/commands/setAgreement.ts'
import { setGrade } from '../../../src/core/job/commands/setGrade.ts'
import type { CueId } from '../../../src/core/job/recordIds.ts'
import { createAppStore } from '../../../src/store/appStore.ts'
import { checkKeyOf } from '../../../src/store/checkKey.ts'
import { perform, showJob } from '../../../src/store/document.ts'
import { setLedger } from '../../../src/store/ledgerChanges.ts'
import { recallLooked } from '../../../src/store/looked.ts'
import { cuesOf } from '../../../src/store/queries.ts'
import { selectScene } from '../../../src/store/selection.ts'
import { movePlayhead } from '../../../src/store/session.ts'
import { withVerdict } from '../../../src/store/verdictBook.ts'
import { type App, AppContext } from '../../../src/ui/appContext.ts'
import { FindingBar } from '../../../src/ui/ledger/FindingBar.tsx'
import { Ledger } from '../../../src/ui/ledger/Ledger.tsx'
import type { Services } from '../../../src/ui/services.ts'
import { STRINGS } from '../../../src/ui/strings.ts'
import '../../../src/ui/styles/app.css'
import '../../../src/ui/styles/ledger.css'
import { reportOf } from '../../core/flashes/flashClip.ts'
import { SAID } from '../../support/sampleAnswer.ts'
import { cueId, sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { verdictOf } from '../../support/sampleVerdict.ts'

const CUES = 10_000
const CUE_FRAMES = 50

let root: Root
let app: App
let requested: Set<number>

/** Services that move the line and note which stills are asked for. */
const servicesFor = (store: App['store']): Services =>
  ({
    seek: (wanted: number) => movePlayhead(store, wanted),
    pause: () => undefined,
    stills: {
      get: () => undefined,
      nearest: () => undefined,
      request: (at: number) => requested.add(at),
      subscribe: () => () => undefined,
    },
  }) as unknown as Services

const settled = () =>
  new Promise((resolve) => {
    requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(resolve)))
  })

beforeEach(async () => {
  const job = sampleJob(
    Array.from({ length: CUES }, (_, i) => i * CUE_FRAMES),
    (cue, i) => ({
      ...cue,
      scene: i % 10 < 3 ? `s${Math.floor(i / 10)}` : '',
      ramp: i === 2 ? 20 : 0,
      rampShape: i === 2 ? 'eased' : 'linear',
      boundary: { kind: i === 0 ? 'start' : 'cut', confidence: i === 4 ? 0.4 : 1 },
    }),
    sampleReel({ frames: CUES * CUE_FRAMES }),
  )
  requested = new Set()
  const store = createAppStore()
  app = { store, services: servicesFor(store) }
  showJob(store, job, 'shelf')
  const place = document.createElement('div')
  place.style.cssText =
    'display:grid; grid-template-rows:auto minmax(0,1fr); width:620px; height:700px'
  document.body.replaceChildren(place)
  root = createRoot(place)
  root.render(
    createElement(AppContext, { value: app }, createElement(FindingBar), createElement(Ledger)),
  )
  await settled()
})
afterEach(() => root.unmount())

const grid = (): HTMLElement => {
  const found = document.querySelector<HTMLElement>('[role=grid]')
  if (!found) throw new Error('no grid')
  return found
}
const rowOf = (n: number): HTMLElement => {
  const found = document.querySelector<HTMLElement>(`[data-cue="${cueId(n)}"]`)
  if (!found) throw new Error(`cue ${n} is not drawn`)
  return found
}
const drawnRows = () => document.querySelectorAll('[data-cue]').length
const lineY = () => document.querySelector('.line')?.getBoundingClientRect().top ?? 0
const playhead = () => app.store.getState().playhead
const selection = () => app.store.getState().selection

const pointer = (type: string, on: Element, x: number, y: number, more: PointerEventInit = {}) =>
  on.dispatchEvent(
    new PointerEvent(type, {
      bubbles: true,
      clientX: x,
      clientY: y,
      button: 0,
      pointerId: 1,
      ...more,
    }),
  )
const click = (on: Element, more: PointerEventInit = {}) => {
  const { left, top } = on.getBoundingClientRect()
  pointer('pointerdown', on, left + 4, top + 4, more)
  pointer('pointerup', on, left + 4, top + 4, more)
}

describe('the ledger of ten thousand cues', () => {
  it('draws few rows wherever it is looked at, and the line stays in its place', async () => {
    const rest = lineY()
    for (const wanted of [0, 123_456, 499_999, 777]) {
      movePlayhead(app.store, wanted)
      await settled()
      expect(drawnRows()).toBeGreaterThan(5)
      expect(drawnRows()).toBeLessThan(25)
      expect(lineY()).toBeCloseTo(rest, 0)
      const row = rowOf(Math.floor(wanted / CUE_FRAMES) + 1).getBoundingClientRect()
      expect(row.top).toBeLessThanOrEqual(rest + 2)
      expect(row.bottom).toBeGreaterThanOrEqual(rest - 2)
    }
  })

  it('draws a bounded number of rows at every scale', async () => {
    for (const pixelsPerSecond of [1, 20, 1200]) {
      setLedger(app.store, { timing: 'true', pixelsPerSecond })
      movePlayhead(app.store, 250_000)
      await settled()
      expect(drawnRows()).toBeGreaterThan(0)
      expect(drawnRows()).toBeLessThan(420)
      expect(document.querySelectorAll('.still-pair').length).toBeLessThan(80)
    }
  })

  it('makes every cue as high as its shot is long, and repeats stills along it', async () => {
    setLedger(app.store, { timing: 'true', pixelsPerSecond: 200 })
    await settled()
    expect(rowOf(1).getBoundingClientRect().height).toBeCloseTo(400, 0)
    expect(rowOf(1).querySelectorAll('.still-pair').length).toBeGreaterThan(5)
    expect(requested.has(3)).toBe(true)
  })

  it('says of a cue that it flashes past a limit, and of no other', async () => {
    const state = app.store.getState()
    const [first] = cuesOf(state)
    if (!first) throw new Error('no cue')
    const flashes = reportOf((n) => (n % 2 === 0 ? 0.9 : 0.1), 12, { width: 8, height: 4 })
    const key = checkKeyOf(state, first) ?? ''
    app.store.setState({
      verdicts: withVerdict(state.verdicts, key, verdictOf(true), first.first, flashes),
    })
    await settled()
    expect(rowOf(1).textContent).toContain(STRINGS.flashes.over)
    expect(rowOf(2).textContent).not.toContain(STRINGS.flashes.over)
  })

  it('says where it is to those who do not see it', async () => {
    expect(grid().getAttribute('aria-rowcount')).toBe(String(CUES + 1))
    movePlayhead(app.store, 5 * CUE_FRAMES)
    await settled()
    expect(grid().getAttribute('aria-activedescendant')).toBe(rowOf(6).id)
    expect(rowOf(6).getAttribute('aria-rowindex')).toBe('7')
    expect(rowOf(3).textContent).toContain('ramp over 20 frames, eased')
    expect(rowOf(5).textContent).toContain('doubtful')
    expect(rowOf(3).textContent).toContain('scene s0')
    setLedger(app.store, { timing: 'true', pixelsPerSecond: 1 })
    await settled()
    expect(rowOf(6).getAttribute('aria-label')).toMatch(/^6 10:00:10:00 not measured ○ open$/u)
  })
})

describe('selecting', () => {
  it('goes by click, with Shift a range, with Ctrl one more', async () => {
    click(rowOf(3).children[1] ?? grid())
    // Past its ramp of 20 frames, where its own values are.
    expect([playhead(), selection()]).toEqual([2 * CUE_FRAMES + 20, [cueId(3)]])
    await settled()
    click(rowOf(5).children[1] ?? grid(), { shiftKey: true })
    expect(selection()).toEqual([3, 4, 5].map(cueId))
    click(rowOf(4).children[1] ?? grid(), { ctrlKey: true })
    expect(selection()).toEqual([3, 5].map(cueId))
    await settled()
    expect(rowOf(5).getAttribute('aria-selected')).toBe('true')
    expect(rowOf(4).getAttribute('aria-selected')).toBe('false')
  })

  it('goes by key, and the focus stays in the ledger', async () => {
    grid().focus()
    await userEvent.keyboard('{ArrowDown}{ArrowDown}')
    // Past its ramp of 20 frames, where its own values are.
    expect([playhead(), selection()]).toEqual([2 * CUE_FRAMES + 20, [cueId(3)]])
    await userEvent.keyboard('{Shift>}{ArrowDown}{ArrowDown}{/Shift}')
    expect(selection()).toEqual([3, 4, 5].map(cueId))
    expect(document.activeElement).toBe(grid())
  })

  it('takes all cues of one scene mark', () => {
    movePlayhead(app.store, 11 * CUE_FRAMES)
    selectScene(app.store)
    expect(selection()).toEqual([11, 12, 13].map(cueId))
  })
})

describe('the strip', () => {
  const strip = (n: number) => rowOf(n).querySelector('.strip') ?? grid()

  it('moves under the line as it is dragged, and a press that does not move selects', async () => {
    setLedger(app.store, { timing: 'true', pixelsPerSecond: 50 })
    await settled()
    const film = strip(2)
    pointer('pointerdown', film, 60, 500)
    pointer('pointermove', film, 60, 498)
    expect(playhead()).toBe(0)
    pointer('pointermove', film, 60, 300)
    expect(playhead()).toBe(100)
    expect(app.store.getState().gesture).toBe('scrub')
    pointer('pointermove', film, 60, 400)
    expect(playhead()).toBe(50)
    pointer('pointerup', film, 60, 400)
    expect(app.store.getState().gesture).toBeUndefined()
    await settled()
    click(strip(4))
    expect([playhead(), selection()]).toEqual([150, [cueId(4)]])
  })
})

describe('filters', () => {
  const listed = () => {
    const found = document.querySelector<HTMLSelectElement>('select[aria-label="Cues listed"]')
    if (!found) throw new Error('no choice')
    return found
  }
  const looked = (count: number): CueId[] => Array.from({ length: count }, (_, i) => cueId(i + 1))

  it('are told with their counts and list only what they ask for', async () => {
    recallLooked(app.store, looked(CUES - 2))
    perform(app.store, (job) => setAgreement(job, [cueId(7), cueId(9)], 'agreed', SAID))
    perform(app.store, (job) =>
      setGrade(job, [cueId(9)], (grade) => ({ ...grade, saturation: 0.4 })),
    )
    await settled()
    expect([...listed().options].map(({ text }) => text)).toEqual([
      '10000 cues',
      '9999 not agreed',
      '0 outside tolerance',
      '2 not looked at',
      '1 doubtful',
      '1 changed since',
    ])
    await userEvent.selectOptions(listed(), 'changed-since')
    await settled()
    expect(grid().getAttribute('aria-rowcount')).toBe('2')
    expect(drawnRows()).toBe(1)
    expect(rowOf(9).textContent).toContain('changed since')
    expect(grid().getAttribute('aria-activedescendant')).toBeNull()
  })

  it('that ask for what there is none of say so, with a way back', async () => {
    setLedger(app.store, { filter: 'outside' })
    await settled()
    expect(document.querySelector('[role=status]')?.textContent).toContain('No cue is listed')
    const back = document.querySelector<HTMLButtonElement>('.nothing-listed button')
    back?.click()
    await settled()
    expect(app.store.getState().ledger.filter).toBe('all')
    expect(drawnRows()).toBeGreaterThan(5)
  })
})
