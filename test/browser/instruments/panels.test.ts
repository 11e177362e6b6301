import { createElement } from 'react'
import { createRoot, type Root } from 'react-dom/client'
import { afterEach, expect, it } from 'vitest'
import { page } from 'vitest/browser'
import { createFeed } from '../../../src/app/feed.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { setGrade } from '../../../src/core/job/commands/setGrade.ts'
import type { HeldId } from '../../../src/core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import type { Planes } from '../../../src/core/picture/planes.ts'
import { pointDifference } from '../../../src/core/picture/pointReading.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { createAppStore } from '../../../src/store/appStore.ts'
import { perform, showJob } from '../../../src/store/document.ts'
import { readAt } from '../../../src/store/pointingChanges.ts'
import { setView } from '../../../src/store/session.ts'
import { AppContext } from '../../../src/ui/appContext.ts'
import { Instruments } from '../../../src/ui/bench/Instruments.tsx'
import type { Reading, Services, ShownFrame } from '../../../src/ui/services.ts'
import '../../../src/ui/styles/app.css'
import '../../../src/ui/styles/instruments.css'
import { cueId, REEL_ID, sampleJob } from '../../support/sampleJob.ts'

const HELD = 'held-a' as HeldId
const HELD_CODE = 400

let root: Root | undefined
afterEach(() => {
  root?.unmount()
  document.body.replaceChildren()
})

/** A grey picture of one 10-bit code: its left half that code, its right half peak. */
const greyFrame = (code: number): ShownFrame => {
  const plane = (valueAt: (i: number) => number) =>
    Uint16Array.from({ length: 64 }, (_, i) => valueAt(i))
  const grey = plane((i) => (i % 8 < 4 ? code : 940))
  const samples: Planes['samples'] = [grey, plane(() => 512), plane(() => 512)]
  const planes: Planes = { width: 8, height: 8, layout: '444', depth: 10, samples }
  return { frame: frame(3), planes, coding: { matrix: 'bt709', range: 'narrow' } }
}

const setUp = async () => {
  await page.viewport(1000, 600)
  const store = createAppStore()
  const job = sampleJob()
  const held = { id: HELD, reel: REEL_ID, frame: frame(3), name: 'grey' }
  const look = { grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING }
  showJob(store, { ...job, held: { [HELD]: { ...held, ...look } } }, 'shelf')
  store.setState({ reelId: REEL_ID, media: 'ready' })
  const readings = createFeed<Reading>()
  const frames = createFeed<ShownFrame>()
  frames.put(greyFrame(502))
  const heldFrame = greyFrame(HELD_CODE)
  const services: Partial<Services> = {
    readings,
    frames,
    held: {
      get: (id) => (id === HELD ? heldFrame : undefined),
      request: () => undefined,
      subscribe: () => () => undefined,
    },
  }
  const place = document.createElement('main')
  Object.assign(place.style, { display: 'grid', width: '820px', height: '220px' })
  document.body.append(place)
  root = createRoot(place)
  const app = { store, services: services as Services }
  root.render(createElement(AppContext, { value: app }, createElement(Instruments)))
  return { store, readings }
}

const point = () => page.getByRole('region', { name: 'Point reading' })

it('a point is read with the grade in force, as scanned on request, and kept until reset', async () => {
  const { store } = await setUp()
  await expect.element(point()).toHaveTextContent('no point read')
  readAt(store, { x: 0.2, y: 0.5 })
  await expect
    .element(point())
    .toHaveTextContent(/kept 1, 4.*R′502.*Y′502 ?50\.0 %.*Cb512 ?0\.0 %/u)
  perform(store, (job) =>
    setGrade(job, [cueId(1)], (grade) => ({ ...grade, gain: [1.5, 1, 1] }), 'gain'),
  )
  await expect.element(point()).toHaveTextContent(/R′721 ?75\.0 %Y′549 ?55\.3 %G′502/u)
  await page.getByRole('combobox', { name: 'Signal measured' }).selectOptions('scanned')
  await expect.element(point()).toHaveTextContent(/scanned, kept 1, 4.*R′502/u)
  await page.getByRole('button', { name: 'Take the kept point away' }).click()
  await expect.element(point()).toHaveTextContent('no point read')
})

it('the pointer goes before the kept place, and a window is the mean of its pixels', async () => {
  const { store } = await setUp()
  readAt(store, { x: 0.2, y: 0.5 })
  store.setState({ pointing: { ...store.getState().pointing, over: { x: 0.45, y: 0.5 } } })
  await expect.element(point()).toHaveTextContent(/at 3, 4.*Y′502/u)
  await page.getByRole('combobox', { name: 'Point read as the mean of' }).selectOptions('5')
  // Columns 1…5: three of code 502 and two of 940.
  await expect.element(point()).toHaveTextContent(/Y′677/u)
})

it('the difference from a held frame is told at the same place', async () => {
  const { store } = await setUp()
  readAt(store, { x: 0.2, y: 0.5 })
  await expect.element(point()).toHaveTextContent('ΔE00–')
  setView(store, { against: { kind: 'held', id: HELD } })
  const [now, then] = [(502 - 64) / 876, (HELD_CODE - 64) / 876]
  const difference = pointDifference([now, now, now], [then, then, then])
  await expect.element(point()).toHaveTextContent(`ΔE00${difference.toFixed(1)}`)
})

it('signal past the edge of the instrument is told by sign and number, in the unit chosen', async () => {
  const { readings } = await setUp()
  const inside = { low: 0, high: 1 }
  readings.put({
    signal: 'graded',
    vectorscope: { counts: new Uint32Array(16), size: 4 },
    past: { r: { low: -0.2, high: 1.25 }, g: inside, b: inside, y: { low: 0, high: 1.1 } },
  })
  await expect.element(page.getByText('▲ Y′ 110 %')).toBeVisible()
  await page.getByRole('combobox', { name: 'Instrument of levels' }).selectOptions('parade')
  await page.getByRole('combobox', { name: 'Unit of levels' }).selectOptions('millivolts')
  await expect.element(page.getByText('▲ R′ 875 mV')).toBeVisible()
  await expect.element(page.getByText('▼ R′ −140 mV')).toBeVisible()
  await expect
    .element(page.getByRole('img', { name: 'parade · R′G′B′ of the graded picture' }))
    .toBeVisible()
})
