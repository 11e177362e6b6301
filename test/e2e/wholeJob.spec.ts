import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { type Download, expect, type Page, test } from '@playwright/test'
import { readCdl } from '../../src/core/formats/cdl/readCdl.ts'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import { isClean, setNumber } from '../support/benchPage.ts'
import { readEventLines } from '../support/readEventLines.ts'

const CLIP = resolve(import.meta.dirname, '../media/video/bbb-trailer-360p25.webm')

/** Cues that begin with a hard cut in the clip (test/media/cuts.json), from 0. */
const HARD_CUTS = [227, 280, 330, 347, 375, 400, 415, 623, 650, 749, 756]

const watchRequests = (page: Page): string[] => {
  const others: string[] = []
  page.on('request', (request) => {
    const url = new URL(request.url())
    if (!['127.0.0.1', ''].includes(url.hostname)) others.push(request.url())
  })
  return others
}

const textOf = async (download: Download): Promise<string> =>
  readFile(await download.path(), 'utf8')

const saved = async (page: Page, button: string): Promise<string> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ])
  return textOf(download)
}

const verdict = (page: Page) => page.getByRole('status', { name: 'Tolerance verdict' })

test('a real reel becomes a graded cue list, is handed over, and is there after a reload', async ({
  page,
}) => {
  const others = watchRequests(page)
  const errors: string[] = []
  page.on('pageerror', (error) => errors.push(error.message))

  await page.goto('./')
  await expect(page.getByRole('heading', { name: 'Reelwright' })).toBeVisible()
  expect(await page.evaluate(() => crossOriginIsolated)).toBe(true)
  await isClean(page)

  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a reel…' }).click(),
  ])
  await chooser.setFiles(CLIP)
  const question = page.getByRole('dialog')
  await expect(question).toContainText('leaves this open')
  await expect(question.getByLabel('Luma equation')).toHaveValue('bt601')
  await isClean(page)
  await question.getByLabel('Luma equation').selectOption('bt709')
  await question.getByRole('button', { name: 'Open the reel' }).click()

  await page.getByRole('button', { name: /^Find shots/u }).click()
  const standing = page.getByText(/^cue 1 of 2\d ·/u)
  await expect(standing).toBeVisible({ timeout: 90_000 })
  await expect(page.getByRole('button', { name: /^Find shots/u })).toBeEnabled({ timeout: 60_000 })
  await expect(page.getByRole('row', { name: /10:00:09:02/u })).toBeVisible()

  await page.getByRole('row', { name: /10:00:09:02/u }).click()
  await expect(page.getByRole('timer')).toHaveText('10:00:09:02')
  await expect(verdict(page)).toContainText('inside', { timeout: 60_000 })
  await setNumber(page, 'gain all', '1.6')
  await expect(verdict(page)).toContainText('over', { timeout: 60_000 })
  await expect(page.getByRole('row', { name: /10:00:09:02/u })).toContainText('over')
  await page.getByRole('button', { name: /^Undo/u }).click()
  await expect(verdict(page)).toContainText('inside')
  await setNumber(page, 'gamma all', '1.15')
  await setNumber(page, 'lift B', '-0.02')

  await page.keyboard.press('PageDown')
  await expect(page.getByRole('timer')).toHaveText('10:00:11:05')
  await setNumber(page, 'saturation', '0.8')
  await page.getByRole('button', { name: 'Framing', exact: true }).click()
  const zoom = page.getByRole('spinbutton', { name: 'zoom' })
  await zoom.focus()
  for (let i = 0; i < 3; i++) await zoom.press('ArrowUp')
  await expect(zoom).toHaveValue('1.030×')
  await page.getByRole('button', { name: 'Cue', exact: true }).click()
  const note = page.getByRole('textbox', { name: 'note' })
  await note.fill('Kept small: <b>title</b>')
  await note.press('Escape')
  await expect(page.getByText('Kept small: <b>title</b>').first()).toBeVisible()
  await isClean(page)
  await page.getByRole('grid', { name: 'Ledger' }).focus()
  await page.keyboard.press('Space')
  await expect(page.getByRole('timer')).not.toHaveText('10:00:11:05')
  await page.keyboard.press('Space')

  const job = readJob(await saved(page, 'Save the job to a file'))
  if (!job.ok) throw new Error(job.problems[0].says)
  const firsts = Object.values(job.value.cues).map(({ first }): number => first)
  for (const cut of HARD_CUTS) expect(firsts).toContain(cut)

  await expect(page.getByRole('status', { name: 'Keeping in this browser' })).toContainText('kept')
  await page.reload()
  await page
    .getByRole('button', { name: /^bbb-trailer-360p25/u })
    .first()
    .click()
  await page.getByRole('row', { name: /10:00:09:02/u }).click()
  await expect(page.getByRole('spinbutton', { name: 'gamma all' })).toHaveValue('1.150')
  await expect(verdict(page)).toContainText('inside', { timeout: 60_000 })

  await page.getByRole('button', { name: 'Hand over', exact: true }).click()
  await expect(page.getByText('The framing of cue 5.').first()).toBeVisible()
  await isClean(page)
  const ccc = readCdl(await saved(page, 'Save bbb-trailer-360p25.ccc'))
  if (!ccc.ok) throw new Error(ccc.problems[0].says)
  expect(ccc.value.corrections).toHaveLength(firsts.length)
  expect(ccc.value.corrections[3]?.cdl.power[1]).toBeCloseTo(1 / 1.15, 9)
  expect(ccc.value.corrections[3]?.cdl.offset[2]).toBe(-0.02)
  expect(ccc.value.corrections[4]?.cdl.saturation).toBe(0.8)
  const events = readEventLines(await saved(page, 'Save bbb-trailer-360p25.edl'))
  expect(events).toHaveLength(firsts.length)
  expect(events[3]?.times[2]).toBe('10:00:09:02')
  expect(events[4]?.sat).toBe(0.8)

  await page.getByRole('button', { name: 'Prepare', exact: true }).click()
  await expect(page.getByLabel('Luma equation (stated by hand)')).toHaveValue('bt709')
  await isClean(page)
  expect(others).toEqual([])
  expect(errors).toEqual([])
})

test('the sample reel opens, and a file that cannot be read is refused in a sentence', async ({
  page,
}) => {
  await page.goto('./')
  await page.getByRole('button', { name: 'Open the sample reel' }).click()
  await expect(page.getByText(/^cue 1 of 18 ·/u)).toBeVisible()
  await expect(page.getByRole('row', { name: /10:00:04:10/u })).toBeVisible()
  await page.getByRole('button', { name: 'Commands' }).click()
  await page.getByLabel('Find a command').fill('close')
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Enter')
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a reel…' }).click(),
  ])
  await chooser.setFiles(resolve(import.meta.dirname, '../media/video/screencast-576p25-nocut.avi'))
  await expect(page.getByRole('alert')).toContainText(
    'holds H.264 pictures in AVI, which this browser cannot read',
  )
})
