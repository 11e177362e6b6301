import { expect, test } from '@playwright/test'
import {
  button,
  isClean,
  number,
  openSampleAt,
  pressPicture,
  shownValue,
} from '../support/benchPage.ts'

test('held frames are compared by wipe, side by side and difference', async ({ page }) => {
  await openSampleAt(page, /10:00:16:00/u)
  await button(page, 'Hold this frame as a reference').click()
  await page.getByRole('row', { name: /10:00:19:09/u }).click()
  await page.getByRole('combobox', { name: 'Compared with' }).selectOption({ index: 1 })
  // A choice of what to compare with begins a wipe where the picture was alone.
  const wipe = page.getByRole('slider', { name: /^Wipe/u })
  const before = Number(await wipe.getAttribute('aria-valuenow'))
  await wipe.press('ArrowRight')
  expect(Number(await wipe.getAttribute('aria-valuenow'))).toBeGreaterThan(before)
  await button(page, 'Show the pictures beside each other').click()
  await expect(page.locator('.picture').getByText(/cue 6/u)).toBeVisible()
  await button(page, /^Show the difference/u).click()
  await isClean(page)
})

test('instruments: parade, millivolts and codes, the scanned signal, a point', async ({ page }) => {
  await openSampleAt(page, /10:00:16:00/u)
  await page.getByRole('combobox', { name: 'Instrument of levels' }).selectOption('parade')
  await expect(page.getByRole('img', { name: /^parade/u })).toBeVisible()
  await page.getByRole('combobox', { name: 'Unit of levels' }).selectOption('code')
  await page.getByRole('combobox', { name: 'Signal measured' }).selectOption('scanned')
  await expect(page.getByRole('img', { name: /scanned picture/u }).first()).toBeVisible()
  await pressPicture(page, 0.1, 0.2)
  const point = page.getByRole('region', { name: 'Point reading' })
  await expect(point).not.toContainText('no point read')
  await expect(point).toContainText(/Y′\s*\d/u)
})

test('the ledger: filters, true lengths, next that needs me', async ({ page }) => {
  await openSampleAt(page, /10:00:16:00/u)
  const ledger = page.getByRole('grid', { name: 'Ledger' })
  await page.getByRole('combobox', { name: 'Cues listed' }).selectOption('doubtful')
  await expect(ledger.getByRole('row')).toHaveCount(2)
  await page.getByRole('combobox', { name: 'Cues listed' }).selectOption('all')
  await button(page, /^Strip in true shot lengths/u).click()
  const [long, short] = await Promise.all(
    [/10:00:00:00/u, /10:00:27:09/u].map((name) => page.getByRole('row', { name }).boundingBox()),
  )
  if (long && short) expect(long.height / short.height).toBeCloseTo(110 / 44, 0)
  await button(page, 'Next cue that needs me').click()
  await expect(page.getByRole('timer')).not.toHaveText('10:00:16:00')
  await isClean(page)
})

test('changes made while it plays stay with the cue in play', async ({ page }) => {
  await openSampleAt(page, /10:00:16:00/u)
  const before = await shownValue(page, 'gain all')
  await page.getByRole('grid', { name: 'Ledger' }).focus()
  await page.keyboard.press('Space')
  await expect(page.getByRole('timer')).not.toHaveText('10:00:16:00')
  await number(page, 'gain all').press('ArrowUp')
  await page.keyboard.press('Space')
  await page.getByRole('row', { name: /10:00:16:00/u }).click()
  expect(await shownValue(page, 'gain all')).toBeCloseTo(before + 0.01, 3)
})

test('keys are given with their conflicts named; a hold shows the scanned picture', async ({
  page,
}) => {
  await openSampleAt(page, /10:00:16:00/u)
  await page.keyboard.down('v')
  await expect(page.locator('.picture').getByText('scanned, whole')).toBeVisible()
  await page.keyboard.up('v')
  await expect(page.locator('.picture').getByText('scanned, whole')).toBeHidden()
  await button(page, /^Keys/u).click()
  const dialog = page.getByRole('dialog', { name: 'Keys and controls' })
  await expect(dialog).toBeVisible()
  await isClean(page)
  await page.keyboard.press('Escape')
  await expect(dialog).toBeHidden()
})

test('a game pad grades: the right stick tints highlights, and it is one undo step', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const axes = [0, 0, 0, 0]
    const buttons = Array.from({ length: 17 }, () => ({ pressed: false, touched: false, value: 0 }))
    const pad = { id: 'made up', index: 0, connected: true, mapping: 'standard', axes, buttons }
    Object.assign(window, { padAxes: axes })
    navigator.getGamepads = () => [{ ...pad, timestamp: performance.now() } as unknown as Gamepad]
  })
  await openSampleAt(page, /10:00:19:09/u)
  await page.evaluate(() => {
    window.dispatchEvent(new Event('gamepadconnected'))
    ;(window as unknown as { padAxes: number[] }).padAxes[2] = 1
  })
  await expect.poll(() => shownValue(page, 'gain tint Cb')).toBeGreaterThan(0.003)
  await page.evaluate(() => {
    ;(window as unknown as { padAxes: number[] }).padAxes[2] = 0
  })
  await page.waitForTimeout(600)
  await button(page, /^Undo/u).click()
  expect(await shownValue(page, 'gain tint Cb')).toBe(0)
})
