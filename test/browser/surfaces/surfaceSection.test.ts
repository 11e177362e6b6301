import axe from 'axe-core'
import { createElement } from 'react'
import { createRoot, type Root } from 'react-dom/client'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { type Pad, startGamePadDesk } from '../../../src/app/gamePadDesk.ts'
import { createMidiDesk, type MidiInput } from '../../../src/app/midiDesk.ts'
import { createSurfaceChanges } from '../../../src/app/surfaceChanges.ts'
import { type AppStore, createAppStore } from '../../../src/store/appStore.ts'
import { AppContext } from '../../../src/ui/appContext.ts'
import type { Services } from '../../../src/ui/services.ts'
import { SurfaceSection } from '../../../src/ui/settings/SurfaceSection.tsx'
import '../../../src/ui/styles/app.css'
import '../../../src/ui/styles/surfaces.css'

let root: Root
let store: AppStore
let pad: Pad | undefined
let connect = () => {}
let isRefusing = false
const axes = [0, 0, 0, 0]
const values: number[] = []
const input: MidiInput = { name: 'faders', state: 'connected', onmidimessage: null }

const plugIn = () => {
  pad = {
    id: 'a pad',
    mapping: 'standard',
    connected: true,
    timestamp: 1,
    axes,
    get buttons() {
      return values.map((value) => ({ value, pressed: value > 0.1 }))
    },
  }
  connect()
}

beforeEach(async () => {
  axes.fill(0)
  values.splice(0, values.length, ...Array.from({ length: 17 }, () => 0))
  pad = undefined
  isRefusing = false
  store = createAppStore()
  startGamePadDesk(
    store,
    {
      getGamepads: () => [pad ?? null],
      now: () => performance.now(),
      requestFrame: (turn) => requestAnimationFrame(turn),
      listen: (onConnected) => {
        connect = onConnected
      },
    },
    createSurfaceChanges(store),
    () => {},
    () => true,
  )
  const host = {
    request: async () => {
      if (isRefusing) throw new DOMException('no', 'NotAllowedError')
      return { inputs: new Map([['a', input]]), onstatechange: null }
    },
    isGranted: async () => false,
  }
  const midi = createMidiDesk(
    store,
    host,
    createSurfaceChanges(store),
    () => {},
    () => true,
  )
  const place = document.createElement('main')
  document.body.append(place)
  root = createRoot(place)
  const services = { midi } as unknown as Services
  root.render(
    createElement(
      AppContext.Provider,
      { value: { store, services } },
      createElement(SurfaceSection),
    ),
  )
  await expect.element(page.getByRole('region', { name: 'Game pad' })).toBeVisible()
})

afterEach(() => {
  pad = undefined
  root.unmount()
  document.body.replaceChildren()
})

/** The list of a select is made when it is gone to. */
const choose = async (name: string, option: string) => {
  const select = page.getByRole('combobox', { name, exact: true })
  await expect.element(select).toBeVisible()
  ;(select.element() as HTMLSelectElement).focus()
  await userEvent.selectOptions(select, option)
}

const setup = () => store.getState().preferences.surface

describe('the game pad on the screen', () => {
  it('says that none is seen, and shows dead zone and curve all the same', async () => {
    await expect.element(page.getByText(/No game pad seen/u)).toBeVisible()
    await expect.element(page.getByRole('button', { name: 'Press the control…' })).toBeDisabled()
    const dead = document.querySelector('.surface-plot circle.dead')
    expect(dead?.getAttribute('r')).toBe('0.12')
    const zone = page.getByRole('spinbutton', { name: 'dead zone' })
    await userEvent.click(zone)
    await userEvent.keyboard('30{Enter}')
    expect(setup().response.deadZone).toBeCloseTo(0.3, 9)
    expect(dead?.getAttribute('r')).toBe('0.3')
  })

  it('shows a stick where it stands and what it gives', async () => {
    plugIn()
    axes[0] = 0.56
    await expect
      .element(page.getByRole('img', { name: 'left stick: 0.56 across, 0.00 up; gives 0.25' }))
      .toBeVisible()
    pad = undefined
    await expect.element(page.getByText(/No game pad seen/u)).toBeVisible()
  })

  it('gives a use to the button that is pressed', async () => {
    plugIn()
    await choose('what the button is to do', 'zoom up')
    await userEvent.click(page.getByRole('button', { name: 'Press the control…' }))
    await expect.element(page.getByText(/Press the control to use/u)).toBeVisible()
    values[3] = 1
    await expect.element(page.getByText('Given to: right cluster, top.')).toBeVisible()
    expect(setup().pad.buttons[3]?.first).toEqual({ kind: 'number', id: 'zoom', direction: 1 })
  })

  it('is mapped from the table, with and without a second use', async () => {
    await choose('left shoulder, second use', 'the same')
    expect(setup().pad.buttons[4]?.second).toBeUndefined()
    await choose('left shoulder, second use', 'saturation up')
    expect(setup().pad.buttons[4]?.second).toMatchObject({ id: 'saturation' })
    await choose('right stick', 'mid tint')
    expect(setup().pad.sticks.right.first).toBe('gamma-tint')
    await userEvent.click(page.getByRole('button', { name: 'Game pad as it was at first' }))
    expect(setup().pad.sticks.right.first).toBe('gain-tint')
  })
})

describe('MIDI on the screen', () => {
  it('says what to do where the browser refuses', async () => {
    isRefusing = true
    await userEvent.click(page.getByRole('button', { name: 'Turn MIDI on' }))
    await expect.element(page.getByText(/The browser refused/u)).toBeVisible()
  })

  it('learns a control and forgets it', async () => {
    await userEvent.click(page.getByRole('button', { name: 'Turn MIDI on' }))
    await expect.element(page.getByText(/hears faders/u)).toBeVisible()
    await userEvent.click(page.getByRole('button', { name: 'Move the control…' }))
    input.onmidimessage?.({ data: Uint8Array.of(0xb0, 7, 20) })
    const forget = page.getByRole('button', { name: 'Forget control change 7, channel 1' })
    await expect.element(forget).toBeVisible()
    await userEvent.click(forget)
    expect(setup().midi.bindings).toEqual([])
  })
})

it('has no failing of accessibility', async () => {
  const { violations } = await axe.run(document.body, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'],
  })
  expect(violations.map(({ id }) => id)).toEqual([])
})
