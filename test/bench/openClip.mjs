/** Opens a clip as a reel, answers what it leaves open as is likely, and waits until it is measured. */
export const openClip = async (page, address, clip) => {
  await page.goto(address)
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a reel…' }).click(),
  ])
  await chooser.setFiles(clip)
  const open = page.getByRole('button', { name: 'Open the reel' })
  await Promise.race([open.waitFor(), page.getByRole('row').nth(1).waitFor()])
  if (await open.isVisible()) await open.click()
  await page.getByText(/1 of 1 · \d outside/u).waitFor({ timeout: 120_000 })
}
