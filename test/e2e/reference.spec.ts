import { resolve } from 'node:path'
import { expect, test } from '@playwright/test'

const CLIP = resolve(import.meta.dirname, '../media/numbered/h264-bframes-24.mp4')
const NO_VECTORS = 'WebAssembly.validate = () => false;'

test('where vectors are missing, the screen says so and measures all the same', async ({
  page,
  context,
}) => {
  await page.addInitScript(NO_VECTORS)
  // An init script is not run in workers.
  await context.route(/Worker.*\.js$/u, async (route) => {
    const response = await route.fetch()
    await route.fulfill({ response, body: NO_VECTORS + (await response.text()) })
  })
  await page.goto('./')
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a reel…' }).click(),
  ])
  await chooser.setFiles(CLIP)
  const open = page.getByRole('dialog').getByRole('button', { name: 'Open the reel' })
  const note = page.getByText('no WebAssembly SIMD here')
  await expect(open.or(note)).toBeVisible()
  if (await open.isVisible()) await open.click()
  await expect(note).toBeVisible()
  const verdict = page.getByRole('status', { name: 'Tolerance verdict' })
  await expect(verdict).toContainText(/inside|over|under/u, { timeout: 60_000 })
  const gain = page.getByRole('spinbutton', { name: 'gain all', exact: true })
  await gain.fill('2')
  await gain.press('Enter')
  await expect(verdict).toContainText('over', { timeout: 60_000 })
})
