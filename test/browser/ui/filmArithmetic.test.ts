import { createElement } from 'react'
import { afterEach, expect, it } from 'vitest'
import { page } from 'vitest/browser'
import { reelOf } from '../../../src/store/queries.ts'
import { useAppState } from '../../../src/ui/appContext.ts'
import { FilmArithmetic } from '../../../src/ui/prepare/FilmArithmetic.tsx'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const Film = () => {
  const reel = useAppState(reelOf)
  return reel ? createElement(FilmArithmetic, { reel }) : null
}
const part = () => page.getByRole('region', { name: 'Film arithmetic' })

it('tells the length of the reel in every way, and of any other that is typed', async () => {
  onScreen(Film)
  await expect.element(part()).toHaveTextContent('1000 frames, 25 ft 00 fr, 7.62 m')
  await page.getByLabelText(/^Length/u).fill('400 ft')
  await expect.element(part()).toHaveTextContent('16000 frames, 400 ft 00 fr, 121.92 m')
  await expect.element(page.getByRole('row', { name: /^24 / })).toHaveTextContent('11:06.736.00')
  await page.getByLabelText(/^Length/u).fill('far')
  await expect.element(part()).toHaveTextContent('“far” is no length of film')
})

it('tells length and pitch at the speed of the reel, and where sound lies with how sure that is', async () => {
  onScreen(Film)
  await page.getByLabelText(/^Speed/u).fill('24')
  await expect.element(part()).toHaveTextContent('length −4.00 %, pitch +70.7 cents')
  await expect
    .element(part())
    .toHaveTextContent('26 frames ahead of its picture, 1.040 s (verified: SMPTE 41')
})
