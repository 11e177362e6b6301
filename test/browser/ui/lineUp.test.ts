import axe from 'axe-core'
import { afterEach, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { reelOf } from '../../../src/store/queries.ts'
import { LineUp } from '../../../src/ui/lineup/LineUp.tsx'
import '../../../src/ui/styles/handover.css'
import '../../../src/ui/styles/lineup.css'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const field = (name: string) => page.getByRole('textbox', { name, exact: true })
const button = (name: string | RegExp) => page.getByRole('button', { name })
const advice = () => page.getByRole('region', { name: 'What to do next' })

const fill = async (numbers: Readonly<Record<string, number>>) => {
  for (const [name, value] of Object.entries(numbers)) {
    await field(name).fill(String(value))
    await userEvent.keyboard('{Enter}')
  }
}

const READ = [
  'Green, open gate is read as',
  'Red less green is read as',
  'Blue less green is read as',
]
const read = (values: readonly number[]) =>
  fill(Object.fromEntries(READ.map((name, i) => [name, values[i] ?? 0])))

/** A made-up scanner: all three levels follow the beam, two of them their own gain as well. */
const scanner = ([beam = 0, red = 0, blue = 0]: readonly number[]) => {
  const green = 4.4 * beam
  return [green, green * (0.6 + 0.008 * red) - green, green * (0.5 + 0.009 * blue) - green]
}

it('leads from readings to all controls at once, and logs the line-up for the reel', async () => {
  const app = onScreen(LineUp)
  await expect.element(button('Write this down')).toBeDisabled()
  await fill({ 'Beam current is set to': 120, 'Red gain is set to': 45, 'Blue gain is set to': 50 })
  await read(scanner([120, 45, 50]))
  await button('Write this down').click()
  await expect.element(advice()).toHaveTextContent('Move Beam current alone, to 145 µA')
  for (const settings of [
    [145, 45, 50],
    [145, 55, 50],
    [145, 55, 60],
  ] as const) {
    await button('It is set so now').click()
    expect(app.store.getState().liningUp.settings).toEqual(settings)
    await read(scanner(settings))
    await button('Write this down').click()
  }
  for (let round = 0; round < 3; round++) {
    const text = (await advice().element()).textContent ?? ''
    if (text.includes('All readings are inside')) break
    expect(text).toContain('Set all of these, then read everything')
    await button('It is set so now').click()
    const { settings } = app.store.getState().liningUp
    await read(scanner(settings.map((each) => each ?? 0)))
    await button('Write this down').click()
  }
  await expect.element(advice()).toHaveTextContent('All readings are inside their limits.')
  await button('Log it for this reel').click()
  expect(reelOf(app.store.getState())?.lineUps.at(-1)?.says).toMatch(
    /^Open gate, flying-spot tube\. Set: Beam current 15\d/u,
  )
})

it('is not logged with a reading outside its limits unless a person writes why', async () => {
  const app = onScreen(LineUp)
  await fill({ 'Beam current is set to': 250, 'Red gain is set to': 45, 'Blue gain is set to': 50 })
  await read([300, 0, 0])
  await button('Write this down').click()
  await expect.element(button('Log it for this reel')).toBeDisabled()
  await page.getByLabelText('Why it is left so').fill('The tube is at its end.')
  await button('Log it for this reel').click()
  expect(reelOf(app.store.getState())?.lineUps.at(-1)?.says).toContain(
    'Left outside its limits because: The tube is at its end.',
  )
})

it('refuses a setting past a hard limit before anything else', async () => {
  onScreen(LineUp)
  await fill({ 'Beam current is set to': 260, 'Red gain is set to': 45, 'Blue gain is set to': 50 })
  await read([700, 0, 0])
  await button('Write this down').click()
  await expect.element(advice()).toHaveTextContent('Beam current stands past its hard limit')
})

it('shows the cautions of the scanner, and has nothing that axe objects to', async () => {
  onScreen(LineUp)
  await expect.element(page.getByText(/about 25 kV/u)).toBeVisible()
  await page.getByLabelText('Sheet (choosing one begins anew)').selectOptions('sensor')
  await expect.element(page.getByText(/do not look into them/u)).toBeVisible()
  await expect.element(page.getByText(/Nitrate film burns/u)).toBeVisible()
  const found = await axe.run(document.body, {
    rules: {
      ...{ 'color-contrast': { enabled: false }, region: { enabled: false } },
      ...{ 'landmark-main-is-top-level': { enabled: false } },
      ...{ 'landmark-no-duplicate-main': { enabled: false } },
    },
  })
  expect(found.violations.map(({ id }) => id)).toEqual([])
})

it('keeps the history of a named machine, plots it, and recalls the last good set', async () => {
  const app = onScreen(LineUp)
  const history = page.getByRole('region', { name: 'History' })
  await history.getByLabelText('Machine, by the name you give it').fill('Orlop 2')
  await userEvent.keyboard('{Enter}')
  await expect.element(history).toHaveTextContent('No line-up of it with 16 mm is kept here yet.')
  await fill({ 'Beam current is set to': 151, 'Red gain is set to': 50, 'Blue gain is set to': 55 })
  await read([665, 0, 1])
  await button('Write this down').click()
  await page.getByText('rollers', { exact: true }).click()
  await page.getByLabelText('Another point').fill('splice ramp')
  await userEvent.keyboard('{Enter}')
  await button('Log it for this reel').click()
  expect(reelOf(app.store.getState())?.lineUps.at(-1)?.says).toContain(
    'Cleaned: rollers, splice ramp.',
  )
  const { log } = app.store.getState().machineHistory
  expect(log).toMatchObject([{ machine: 'Orlop 2', gauge: '16mm', reason: '' }])
  await expect.element(history).toHaveTextContent('1 line-up with 16 mm')
  await expect.element(history.getByRole('img', { name: 'Beam current: 151 µA' })).toBeVisible()
  await fill({ 'Red gain is set to': 10 })
  await button('Recall the last good set').click()
  expect(app.store.getState().liningUp.settings).toEqual([151, 50, 55])
})
