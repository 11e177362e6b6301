import { afterEach, expect, it } from 'vitest'
import { page } from 'vitest/browser'
import { tell, tellProblems } from '../../../src/store/notices.ts'
import { NoticeBar } from '../../../src/ui/parts/NoticeBar.tsx'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

it('one sentence is one line; of several each has its own, and it is put away', async () => {
  const { store } = onScreen(NoticeBar)
  tell(store, 'Saved.')
  const height = () => document.querySelector('.notice')?.getBoundingClientRect().height ?? 0
  await expect.element(page.getByRole('status')).toHaveTextContent('Saved.')
  const compact = height()
  expect(compact).toBeLessThan(50)
  const faults = Array.from({ length: 7 }, (_, i) => `Fault ${i + 1}.`)
  tellProblems(
    store,
    faults.map((says) => ({ code: 'malformed', says })),
  )
  const alert = page.getByRole('alert')
  await expect.element(alert.getByText('Fault 5.', { exact: true })).toBeVisible()
  await expect.element(alert.getByText('and 2 more', { exact: true })).toBeVisible()
  expect(height()).toBeGreaterThan(compact + 4 * 15)
  await page.getByRole('button', { name: 'Close' }).click()
  await expect.element(alert).not.toBeInTheDocument()
})
