import { expect, test } from '@playwright/test'
import {
  button,
  dragBy,
  isClean,
  number,
  openSampleAt,
  pressPicture,
  setNumber,
  shownValue,
  undoCount,
} from '../support/benchPage.ts'

test('curves, tint pads and numbers are one grade, each drag one undo step', async ({ page }) => {
  await openSampleAt(page, /10:00:19:09/u)
  await dragBy(page, page.getByRole('slider', { name: 'white all' }), 0, 20)
  expect(await shownValue(page, 'gain all')).toBeLessThan(0.99)
  expect(await undoCount(page)).toBe(1)
  await button(page, 'R').click()
  await page.getByRole('slider', { name: 'mid R' }).press('ArrowUp')
  expect(await shownValue(page, 'gamma R')).toBeGreaterThan(1)
  expect(await shownValue(page, 'gamma G')).toBe(1)

  const pad = page.getByRole('application', { name: /^shadows tint/u })
  const all = await shownValue(page, 'lift all')
  await dragBy(page, pad, 12, -20)
  expect(await shownValue(page, 'lift tint Cb')).toBeGreaterThan(0.005)
  expect(await shownValue(page, 'lift tint Cr')).toBeGreaterThan(0.01)
  expect(await shownValue(page, 'lift all')).toBeCloseTo(all, 6)
  await page.keyboard.down('Control')
  await dragBy(page, pad, -12, 0)
  await page.keyboard.up('Control')
  expect(await shownValue(page, 'gamma tint Cb')).toBeLessThan(-0.005)
  await pad.press('Delete')
  expect(await shownValue(page, 'lift tint Cb')).toBe(0)
  await isClean(page)
})

test('framing: the box on the scan, squeeze, blanking, safe areas', async ({ page }) => {
  await openSampleAt(page, /10:00:19:09/u)
  await button(page, 'Framing').click()
  await button(page, 'Blank to 1.85 : 1').click()
  expect(await shownValue(page, 'blanking')).toBeCloseTo(100 * (1 - 4 / 3 / 1.85), 1)
  await button(page, 'Squeeze 2.0: anamorphic print').click()
  expect(await shownValue(page, 'squeeze')).toBe(2)
  await button(page, 'Squeeze 1.0: not squeezed').click()
  await button(page, 'Take the blanking away').click()
  await page.getByRole('button', { name: 'Show safe areas' }).first().click()
  await expect(page.locator('.safe-areas, [aria-label*="afe areas"]').first()).toBeVisible()
  await page
    .getByRole('button', { name: /^Show the whole scan/u })
    .first()
    .click()
  await setNumber(page, 'zoom', '1.5')
  const steps = await undoCount(page)
  await dragBy(page, page.getByRole('img', { name: 'Picture', exact: true }), 24, 0)
  expect(await shownValue(page, 'pan')).toBeGreaterThan(1)
  expect(await undoCount(page)).toBe(steps + 1)
  await isClean(page)
})

test('a cue: ramp and its shape, alternates, marks, and what is carried to others', async ({
  page,
}) => {
  await openSampleAt(page, /10:00:19:09/u)
  await setNumber(page, 'gain all', '0.9')
  await button(page, 'Cue').click()
  await setNumber(page, 'ramp in frames', '12')
  await button(page, 'eased').click()
  await expect(page.getByRole('row', { name: /ramp over 12 frames.*10:00:19:09/u })).toBeVisible()

  await button(page, 'Keep the grade as an alternate').click()
  await button(page, 'Grade').click()
  await setNumber(page, 'gain all', '1.1')
  await button(page, 'Cue').click()
  await button(page, 'Compare').click()
  await expect(page.locator('.picture').getByText('A', { exact: true })).toBeVisible()
  await button(page, 'Promote').click()
  await button(page, 'Grade').click()
  expect(await shownValue(page, 'gain all')).toBeCloseTo(0.9, 6)
  await button(page, 'Cue').click()

  await button(page, 'Carry to the next cue').click()
  await page.getByRole('textbox', { name: 'scene' }).fill('pier')
  await page.getByRole('textbox', { name: 'scene' }).press('Enter')
  await isClean(page)
  await page.getByRole('row', { name: /10:00:21:17/u }).click()
  await button(page, 'Grade').click()
  expect(await shownValue(page, 'gain all')).toBeCloseTo(0.9, 6)
  await page.getByRole('row', { name: /10:00:23:19/u }).click({ modifiers: ['Control'] })
  await button(page, 'trim').click()
  await number(page, 'gain all').press('ArrowUp')
  expect(await shownValue(page, 'gain all')).toBeCloseTo(0.91, 6)
  await page.getByRole('row', { name: /10:00:23:19/u }).click()
  expect(await shownValue(page, 'gain all')).toBeCloseTo(1.01, 6)
})

test('what is typed goes to the cue it was typed on, however it is left', async ({ page }) => {
  await openSampleAt(page, /10:00:19:09/u)
  await number(page, 'saturation').fill('0.7')
  await page.getByRole('row', { name: /10:00:23:19/u }).click()
  expect(await shownValue(page, 'saturation')).toBe(1)
  await button(page, 'Cue').click()
  await page.getByRole('textbox', { name: 'note' }).fill('an aeroplane')
  await page.getByRole('row', { name: /10:00:19:09/u }).click()
  await button(page, 'Grade').click()
  expect(await shownValue(page, 'saturation')).toBeCloseTo(0.7, 6)
  await expect(page.getByRole('row', { name: /10:00:23:19.*an aeroplane/u })).toBeVisible()
  await expect(page.getByRole('row', { name: /an aeroplane/u })).toHaveCount(1)
})

test('solvers propose: seen, said in a sentence, then kept or left', async ({ page }) => {
  await openSampleAt(page, /10:00:21:17/u)
  const verdict = page.getByRole('status', { name: 'Tolerance verdict' })
  await expect(verdict).toContainText('over', { timeout: 60_000 })
  await button(page, 'Bring inside by the smallest change').click()
  const proposal = page.getByRole('region', { name: /^Proposal/u })
  await expect(proposal).toContainText(/gain/u, { timeout: 60_000 })
  await isClean(page)
  await proposal.getByRole('button', { name: /^Keep/u }).click()
  await expect(proposal).toBeHidden()
  expect(await undoCount(page)).toBe(1)
  await expect(verdict).toContainText('inside', { timeout: 60_000 })

  await button(page, 'Neutral here: pick places that should be grey').click()
  await pressPicture(page, 0.3, 0.6)
  await expect(proposal).toContainText(/neutral/u)
  await proposal.getByRole('button', { name: /^Leave/u }).click()
  expect(await undoCount(page)).toBe(1)
})
