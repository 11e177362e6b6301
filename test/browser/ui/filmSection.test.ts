import axe from 'axe-core'
import { createElement } from 'react'
import { afterEach, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { reelOf } from '../../../src/store/queries.ts'
import { useAppState } from '../../../src/ui/appContext.ts'
import { FilmSection } from '../../../src/ui/prepare/FilmSection.tsx'
import '../../../src/ui/styles/app.css'
import '../../../src/ui/styles/prepare.css'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const Film = () => {
  const reel = useAppState(reelOf)
  return reel ? createElement(FilmSection, { reel }) : null
}

const film = () => page.getByRole('region', { name: 'The film' })
const field = (name: string) => film().getByRole('textbox', { name, exact: true })

it('keeps what was found in the can, a step each, and warns of it', async () => {
  const app = onScreen(Film)
  const found = () => reelOf(app.store.getState())?.particulars
  await expect.element(film()).toHaveTextContent('not known what the film is made of')
  await film().getByLabelText('Film base').selectOptions('nitrate')
  await expect.element(film()).toHaveTextContent('cannot be put out')
  await film().getByLabelText('Perforation damage').selectOptions('severe')
  await field('Splices').fill('12')
  await userEvent.keyboard('{Enter}')
  await field('Made for, frames a second').fill('16⅔')
  await userEvent.keyboard('{Enter}')
  expect(found()).toMatchObject({
    ...{ support: 'nitrate', perforations: 'severe', splices: 12, speed: { num: 50, den: 3 } },
  })
  await field('Splices').fill('')
  await userEvent.keyboard('{Enter}')
  expect(found()?.splices).toBeNull()
  expect(app.store.getState().history?.past).toHaveLength(5)
})

it('reckons shrinkage from measured pitches', async () => {
  const app = onScreen(Film)
  // 16 mm, 100 pitches of 7.62 mm are 762.00 mm new; 754.38 mm is 1 % (facts/film.md §7).
  await field('Their length, mm').fill('754.38')
  await userEvent.keyboard('{Enter}')
  await page.getByRole('button', { name: 'Take 1.00 %' }).click()
  expect(reelOf(app.store.getState())?.particulars.shrinkage).toBeCloseTo(0.01, 12)
  await expect.element(film()).toHaveTextContent('1 and 2 %')
})

it('marks a place as it is typed, tells what is none, and takes a mark out', async () => {
  const app = onScreen(Film)
  const marks = () => reelOf(app.store.getState())?.particulars.marks
  await film().getByLabelText('At', { exact: true }).fill('4+10')
  await film().getByLabelText('What kind of mark').selectOptions('sync')
  await film().getByLabelText('What is there').fill('punched hole')
  await page.getByRole('button', { name: 'Mark it' }).click()
  expect(marks()).toEqual([{ frame: 170, kind: 'sync', says: 'punched hole' }])
  await film().getByLabelText('At', { exact: true }).fill('nowhere')
  await page.getByRole('button', { name: 'Mark it' }).click()
  expect(app.store.getState().notice).toMatchObject({ isProblem: true })
  await page.getByRole('button', { name: /^Take the mark at/u }).click()
  expect(marks()).toEqual([])
})

it('has nothing that axe objects to', async () => {
  onScreen(Film)
  await expect.element(film()).toBeVisible()
  const found = await axe.run(document.body, {
    rules: { region: { enabled: false }, 'color-contrast': { enabled: false } },
  })
  expect(found.violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
})
