import axe from 'axe-core'
import { afterEach, expect, it, vi } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { setCharting } from '../../../src/store/charting.ts'
import { ChartCard } from '../../../src/ui/lineup/ChartCard.tsx'
import '../../../src/ui/styles/lineup.css'
import '../../../src/ui/styles/prepare.css'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

/** One grey pixel, shown as large as a picture. */
const PICTURE = {
  address:
    'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkaGj4DwAEhQIAU6tQLQAAAABJRU5ErkJggg==',
  width: 800,
  height: 400,
}
const card = () => page.getByRole('region', { name: 'Chart' })
const button = (name: string) => card().getByRole('button', { name, exact: true })

const opened = () => {
  const app = onScreen(ChartCard)
  const measure = vi.fn()
  Object.assign(app.services.chart, { open: vi.fn(), measure })
  setCharting(app.store, { name: 'chart.tif', picture: PICTURE })
  return app
}

it('marks a region out by dragging, and measures it', async () => {
  const app = opened()
  await expect.element(button('Measure')).toBeDisabled()
  const svg = card().getByRole('img')
  await expect.element(svg).toBeVisible()
  const box = (await svg.element()).getBoundingClientRect()
  const at = (x: number, y: number) => ({ x: (box.width * x) / 800, y: (box.height * y) / 400 })
  const element = await svg.element()
  const fire = (type: string, x: number, y: number) => {
    const place = at(x, y)
    element.dispatchEvent(
      new PointerEvent(type, {
        ...{ bubbles: true, pointerId: 1, clientX: box.left + place.x, clientY: box.top + place.y },
      }),
    )
  }
  element.setPointerCapture = () => undefined
  fire('pointerdown', 300, 200)
  await vi.waitFor(() => expect(element.querySelectorAll('rect').length).toBe(2))
  fire('pointermove', 100, 100)
  await vi.waitFor(() => expect(element.querySelector('rect')?.getAttribute('width')).toBe('200'))
  fire('pointerup', 100, 100)
  await vi.waitFor(() =>
    expect(app.store.getState().charting.regions).toEqual([
      { x: 100, y: 100, width: 200, height: 100 },
    ]),
  )
  await button('Measure').click()
  expect(app.services.chart.measure).toHaveBeenCalledOnce()
})

it('takes a region that is typed, and as many as the geometry asks for', async () => {
  const app = opened()
  await page.getByLabelText('What is measured').selectOptions('geometry')
  await expect.element(card()).toHaveTextContent('4 regions to mark out')
  for (const [field, value] of [
    ['from the left', 10],
    ['from the top', 20],
    ['wide', 30],
    ['high', 40],
  ] as const) {
    await page.getByRole('textbox', { name: `Region, ${field}` }).fill(String(value))
    await userEvent.tab()
  }
  await button('Mark it out').click()
  expect(app.store.getState().charting.regions).toEqual([{ x: 10, y: 20, width: 30, height: 40 }])
  await expect.element(card()).toHaveTextContent('3 regions to mark out')
})

it('takes a number as the reading it is named like, or another', async () => {
  const app = opened()
  const measured = [
    { what: 'Green', value: 661.234, unit: 'mV', decimals: 1 },
    { what: 'Width', value: 10, unit: 'pixels', decimals: 2 },
  ]
  setCharting(app.store, { measured })
  await card().getByRole('button', { name: 'Take Green as the reading' }).click()
  expect(app.store.getState().liningUp.values[0]).toBe(661.2)
  await page.getByLabelText('Reading that Width is for').selectOptions('Red less green')
  await card().getByRole('button', { name: 'Take Width as the reading' }).click()
  expect(app.store.getState().liningUp.values[1]).toBe(10)
})

it('has nothing that axe objects to', async () => {
  opened()
  await expect.element(button('Measure')).toBeVisible()
  const found = await axe.run(document.body, {
    rules: { region: { enabled: false }, 'color-contrast': { enabled: false } },
  })
  expect(found.violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
})
