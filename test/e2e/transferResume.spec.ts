import { resolve } from 'node:path'
import { expect, type Page, test } from '@playwright/test'

const CLIP = resolve(import.meta.dirname, '../media/numbered/h264-bframes-24.mp4')

/** A folder in the browser's own storage stands for the one a person would choose. */
const chooseFolder = (): void => {
  Object.assign(window, {
    showDirectoryPicker: async () =>
      (await navigator.storage.getDirectory()).getDirectoryHandle('harbour', { create: true }),
  })
}

const filesThere = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const root = await navigator.storage.getDirectory()
    // Whoever looks first may be the test.
    const folder = await root.getDirectoryHandle('harbour', { create: true })
    const names: string[] = []
    const keys = (folder as unknown as { keys: () => AsyncIterable<string> }).keys()
    for await (const name of keys) names.push(name)
    return names
  })

const line = (page: Page, name: string) => page.getByRole('listitem', { name, exact: true })

/** Answers what the checklist of a reel just opened waits for. */
const answerChecklist = async (page: Page): Promise<void> => {
  await page.getByLabel('What was set and read').fill('Open gate at 95 %.')
  await page.getByRole('button', { name: 'Log the line-up' }).click()
  await page.getByRole('button', { name: 'Take the checksum' }).click()
  await expect(line(page, 'Scan')).toContainText('has the checksum that the job has')
}

test('a pass that is closed half-way is there after it, and is gone on with', async ({ page }) => {
  await page.addInitScript(chooseFolder)
  await page.goto('./')
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a reel…' }).click(),
  ])
  await chooser.setFiles(CLIP)
  await page.getByRole('button', { name: 'Transfer', exact: true }).click()
  await answerChecklist(page)
  await page.getByLabel('Format').selectOption('dpx')
  await page.getByLabel('Leader, seconds').fill('40')
  await page.getByLabel('Leader, seconds').press('Enter')
  await page.getByRole('button', { name: 'Make the transfer' }).click()
  await expect.poll(async () => (await filesThere(page)).length).toBeGreaterThan(100)
  await expect(page.getByRole('status', { name: 'Keeping in this browser' })).toContainText('kept')
  await page.reload()

  await page
    .getByRole('button', { name: /^h264-bframes-24/u })
    .first()
    .click()
  await page.getByRole('button', { name: 'Transfer', exact: true }).click()
  const pass = page.getByRole('region', { name: 'The pass', exact: true })
  await expect(pass).toContainText('harbour was begun on')
  await expect(pass).toContainText('of 1020 frames are there')
  expect(await filesThere(page)).not.toContain('checksums.txt')
  await page.getByRole('button', { name: 'Take the checksum' }).click()
  await pass.getByRole('button', { name: 'Go on with it' }).click()
  await expect(pass).toContainText('frames were there already')
  await expect(page.getByRole('region', { name: 'Passes made' })).toContainText(
    '1020 frames, as planned',
    { timeout: 120_000 },
  )
  await expect(pass).toContainText('found right')
  const names = await filesThere(page)
  expect(names.length).toBe(1021)
  expect(names).toContain('checksums.txt')
})
