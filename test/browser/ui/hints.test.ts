import { afterEach, expect, it } from 'vitest'
import { page } from 'vitest/browser'
import { setView } from '../../../src/store/session.ts'
import { setPreferences } from '../../../src/store/setPreferences.ts'
import { Hints } from '../../../src/ui/settings/Hints.tsx'
import { HINTS } from '../../../src/ui/settings/hints.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const hint = () => page.getByRole('complementary', { name: 'Hint' })

it('hints come one at a time and go for good once put away', async () => {
  const app = onScreen(Hints)
  for (const { id } of HINTS) {
    await expect.element(hint()).toBeVisible()
    await page.getByRole('button', { name: 'Got it' }).click()
    expect(app.store.getState().preferences.hintsSeen).toContain(id)
  }
  await expect.element(hint()).not.toBeInTheDocument()
})

it('a hint goes once what it says was done, and names the key in use', async () => {
  const app = onScreen(Hints)
  setPreferences(app.store, { hintsSeen: ['numbers'] })
  await expect.element(hint()).toHaveTextContent('Hold V to see the scanned picture.')
  setPreferences(app.store, { hand: 'right' })
  await expect.element(hint()).toHaveTextContent('Hold M to see')
  setView(app.store, { isPeeking: true })
  await expect.element(hint()).not.toHaveTextContent('scanned')
  expect(app.store.getState().preferences.hintsSeen).toContain('scanned')
})

it('no more hints means none', async () => {
  const app = onScreen(Hints)
  await page.getByRole('button', { name: 'No more hints' }).click()
  await expect.element(hint()).not.toBeInTheDocument()
  expect(app.store.getState().preferences.showsHints).toBe(false)
})
