import axe from 'axe-core'
import { createElement } from 'react'
import { createRoot, type Root } from 'react-dom/client'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { newHistory } from '../../../src/core/job/history.ts'
import type { Framing } from '../../../src/core/picture/framing.ts'
import { type AppStore, createAppStore } from '../../../src/store/appStore.ts'
import { undo } from '../../../src/store/document.ts'
import { currentCue } from '../../../src/store/queries.ts'
import { movePlayhead, setView } from '../../../src/store/session.ts'
import { AppContext } from '../../../src/ui/appContext.ts'
import { FramingOverlay } from '../../../src/ui/bench/FramingOverlay.tsx'
import type { Services } from '../../../src/ui/services.ts'
import '../../../src/ui/styles/app.css'
import '../../../src/ui/styles/framing.css'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

/** A delivered picture of 16 : 9 with room round it; the scan is drawn at 0.8 in it. */
const SIZE = { width: 640, height: 360 }
const MARGIN = 40

let root: Root
let store: AppStore

beforeEach(async () => {
  store = createAppStore()
  store.setState({ history: newHistory(sampleJob()), reelId: REEL_ID, media: 'ready' })
  movePlayhead(store, 0)
  setView(store, { showsAperture: true, showsSafeAreas: true })
  const place = document.createElement('main')
  place.style.cssText = `position: absolute; left: ${MARGIN}px; top: ${MARGIN}px; width: ${SIZE.width}px; height: ${SIZE.height}px; background: #777;`
  document.body.append(place)
  root = createRoot(place)
  const services = {} as Services
  const overlay = createElement(FramingOverlay, { size: SIZE })
  root.render(createElement(AppContext.Provider, { value: { store, services } }, overlay))
  await expect.element(grip(/^Delivered frame/u)).toBeVisible()
})

afterEach(() => {
  root.unmount()
  document.body.replaceChildren()
})

const framing = (): Framing => {
  const cue = currentCue(store.getState())
  if (!cue) throw new Error('no cue under the line')
  return cue.framing
}

const steps = (): number => store.getState().history?.past.length ?? 0

const grip = (name: RegExp) => page.getByRole('slider', { name })

/** Drags from the middle of a grip by so many pixels of the screen. */
const drag = async (name: RegExp, dx: number, dy: number) => {
  const box = grip(name).element().getBoundingClientRect()
  const [x, y] = [box.width / 2, box.height / 2]
  await userEvent.dragAndDrop(grip(name), page.elementLocator(document.body), {
    sourcePosition: { x, y },
    targetPosition: { x: box.left + x + dx, y: box.top + y + dy },
    force: true,
  } as Parameters<typeof userEvent.dragAndDrop>[2])
}

describe('the delivered frame on the whole scan', () => {
  it('pans and tilts by what it is dragged, in one undo step', async () => {
    await drag(/^Delivered frame/u, 64, -36)
    expect(framing().pan).toBeCloseTo(64 / (0.8 * SIZE.width), 2)
    expect(framing().tilt).toBeCloseTo(-36 / (0.8 * SIZE.height), 2)
    expect(steps()).toBe(1)
    expect(store.getState().gesture).toBeUndefined()
    undo(store)
    expect(framing().pan).toBe(0)
  })

  it('is resized by a corner about the opposite one', async () => {
    await drag(/bottom right/u, -128, -72)
    expect(framing().zoom).toBeCloseTo(1 / 0.75, 2)
    // The top left corner of the frame is still that of the scan.
    expect(framing().pan).toBeCloseTo(-(framing().zoom - 1) / 2, 4)
    expect(framing().tilt).toBeCloseTo(-(framing().zoom - 1) / 2, 4)
    expect(steps()).toBe(1)
  })

  it('is turned by the handle over it', async () => {
    await drag(/^Turn/u, -30, 0)
    expect(framing().rotation).toBeGreaterThan(5)
    expect(framing().zoom).toBe(1)
  })

  it('is moved by keys, coarse and fine, a run of them in one step', async () => {
    ;(grip(/^Delivered frame/u).element() as HTMLElement).focus()
    await userEvent.keyboard('{ArrowRight>3/}')
    expect(framing().pan).toBeCloseTo(0.003, 9)
    expect(steps()).toBe(1)
    await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}{Alt>}{ArrowDown}{/Alt}')
    expect(framing().tilt).toBeCloseTo(0.0101, 9)
    expect(steps()).toBe(3)
    await userEvent.keyboard('{Delete}')
    expect(framing()).toMatchObject({ pan: 0, tilt: 0 })
    expect(steps()).toBe(4)
  })

  it('stops at its limits and says so', async () => {
    ;(grip(/top left/u).element() as HTMLElement).focus()
    await userEvent.keyboard('{Shift>}{ArrowLeft>9/}{/Shift}')
    expect(framing().zoom).toBe(0.25)
    await expect
      .element(grip(/top left/u))
      .toHaveAttribute('aria-valuetext', '0.250× (at its limit)')
  })

  it('leaves the picture alone while the scanned picture is looked at', async () => {
    setView(store, { isPeeking: true })
    await expect.element(grip(/^Delivered frame/u)).not.toBeInTheDocument()
  })

  it('has nothing axe objects to', async () => {
    await expect.element(page.getByRole('list', { name: 'Safe areas' })).toBeVisible()
    const { violations } = await axe.run(document.body)
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  })
})
