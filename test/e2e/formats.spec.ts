import { execFile } from 'node:child_process'
import { mkdtemp, readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { promisify } from 'node:util'
import { expect, type Locator, type Page, test } from '@playwright/test'
import { strFromU8, unzipSync } from 'fflate'
import { readClf } from '../../src/core/formats/clf/readClf.ts'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import { readList } from '../../src/core/formats/readList.ts'
import { button, isClean, openSampleAt, setNumber, undoCount } from '../support/benchPage.ts'

const INTERCHANGE = resolve(import.meta.dirname, '../media/interchange')

const TIMING = { rate: { num: 25, den: 1 }, isDropFrame: false }

type Given = string | { readonly name: string; readonly mimeType: string; readonly buffer: Buffer }

const textFile = (name: string, text: string): Given => ({
  name,
  mimeType: 'text/plain',
  buffer: Buffer.from(text),
})

/** The sample reel cut anew and scanned otherwise: 30 frames off its head, 99 out of its middle. */
const recutOfSample = async (): Promise<string> => {
  const path = join(await mkdtemp(join(tmpdir(), 'recut-')), 'recut.mp4')
  const kept = "select='between(n,30,600)+between(n,700,1375)',setpts=N/25/TB"
  const looks = 'eq=contrast=0.92:brightness=0.03,scale=768:576'
  const coded = ['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '20', '-an']
  const sample = resolve(import.meta.dirname, '../../samples/slack-water-at-skerrow.mp4')
  const from = ['-v', 'error', '-y', '-i', sample, '-vf', `${kept},${looks}`, '-r', '25']
  await promisify(execFile)('ffmpeg', [...from, ...coded, path])
  return path
}

const importDialog = (page: Page): Locator => page.getByRole('dialog', { name: /^Import / })

/** Chooses a list from the list of commands. */
const chooseList = async (page: Page, file: Given): Promise<void> => {
  await page.getByRole('grid', { name: 'Ledger' }).focus()
  await page.keyboard.press('/')
  await page.getByLabel('Find a command').fill('import')
  await page.keyboard.press('ArrowDown')
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.keyboard.press('Enter'),
  ])
  await chooser.setFiles(file)
}

/** Drops a file on the screen as a person does from a folder. */
const drop = async (page: Page, name: string, text: string): Promise<void> => {
  const files = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer()
      transfer.items.add(new File([content], fileName))
      return transfer
    },
    [name, text] as const,
  )
  await page.dispatchEvent('body', 'dragover', { dataTransfer: files })
  await page.dispatchEvent('body', 'drop', { dataTransfer: files })
}

const saved = async (page: Page, name: string | RegExp): Promise<Buffer> => {
  const [download] = await Promise.all([page.waitForEvent('download'), button(page, name).click()])
  return readFile(await download.path())
}

test('the whole hand-over is one file, and each list of it comes back unchanged', async ({
  page,
}) => {
  await openSampleAt(page, /10:00:16:00/u)
  await setNumber(page, 'saturation', '0.87654321')
  await button(page, 'Hand over').click()
  const main = page.getByRole('main', { name: 'Hand over' })
  await expect(main.getByRole('row', { name: /^Ramps/u })).toContainText('left out 3 cues')
  await expect(main.getByText('Looking…')).toHaveCount(0, { timeout: 60_000 })
  await isClean(page)
  const files = unzipSync(await saved(page, 'Save the whole hand-over'))
  const text = (ending: string): string => {
    const name = Object.keys(files).find((each) => each.endsWith(ending)) ?? ''
    return strFromU8(files[name] ?? new Uint8Array())
  }
  const job = readJob(text('.reelwright.json'))
  expect(job.ok && Object.keys(job.value.cues)).toHaveLength(18)
  expect(text('-losses.txt')).toContain('Statement of losses: Slack Water at Skerrow')
  for (const ending of ['.ccc', '.cdl', '.edl', '.otio', '.csv']) {
    const list = readList(ending, text(ending), TIMING)
    expect(list.ok && list.value.decisions.length, ending).toBe(18)
  }
  expect(Object.keys(files).filter((name) => name.startsWith('cc/'))).toHaveLength(18)
  const processes = Object.keys(files).filter((name) => name.startsWith('clf/'))
  expect(processes).toHaveLength(18)
  expect(readClf(strFromU8(files[processes[5] ?? ''] ?? new Uint8Array())).ok).toBe(true)

  await button(page, 'Rehearse').click()
  const steps = await undoCount(page)
  for (const ending of ['.ccc', '.otio', '.csv']) {
    await chooseList(page, textFile(`back${ending}`, text(ending)))
    await importDialog(page).getByRole('button', { name: 'Import', exact: true }).click()
    await expect(page.getByText(`back${ending} changes nothing`)).toBeVisible()
    expect(await undoCount(page)).toBe(steps)
  }
})

test('a cue of the statement is gone to, and its lists are saved one by one', async ({ page }) => {
  await openSampleAt(page, /10:00:00:00/u)
  await button(page, 'Hand over').click()
  const edl = page.getByRole('region', { name: 'Edit decision list' })
  await expect(edl.getByText('Ramps')).toBeVisible({ timeout: 60_000 })
  const list = readList('edl', (await saved(page, /^Save Skerrow.*\.edl$/u)).toString(), TIMING)
  expect(list.ok && list.value.decisions.length).toBe(18)
  const zip = unzipSync(await saved(page, 'Save 18 .cc files in one .zip'))
  expect(Object.keys(zip)).toHaveLength(18)
  expect((await saved(page, 'Save the statement of losses')).toString()).toContain('Cues: 5, 11')
  await edl.getByRole('group', { name: 'Ramps: cues' }).getByText('11').click()
  await expect(page.getByText(/^cue 11 of 18/u)).toBeVisible()
})

test('a list dropped on a job is looked at first, then taken as one step', async ({ page }) => {
  await openSampleAt(page, /10:00:00:00/u)
  const list = [
    'TITLE: RECUT',
    '001  SKERROW  V     C        10:00:00:00 10:00:04:12 10:00:00:00 10:00:04:12',
    '* ASC_SOP (1 1 1)(0 0 0)(1 1 1)',
    '* ASC_SAT 0.5',
    '002  SKERROW  V     C        10:00:04:12 10:00:05:20 10:00:04:12 10:00:05:20',
    '003  SKERROW  V     C        10:00:05:20 10:00:07:05 10:00:05:20 10:00:07:05',
    '004  SKERROW  V     C        11:00:00:00 11:00:01:00 11:00:00:00 11:00:01:00',
    '',
  ].join('\r\n')
  await drop(page, 'recut.edl', list)
  const dialog = importDialog(page)
  await expect(dialog).toBeVisible()
  await expect(dialog.getByRole('row', { name: /moves/u })).toContainText(
    '10:00:04:10 → 10:00:04:12',
  )
  await expect(dialog.getByRole('row', { name: /begins/u })).toContainText('10:00:05:20')
  await expect(dialog.getByRole('row', { name: /conflicts/u })).toContainText('line 7')
  await isClean(page)
  await dialog.getByRole('tab', { name: /^Cues left/u }).click()
  await isClean(page)
  await dialog.getByRole('button', { name: 'Cancel' }).click()
  expect(await undoCount(page)).toBe(0)
  await expect(page.getByText(/^cue 1 of 18/u)).toBeVisible()

  await drop(page, 'recut.edl', list)
  await dialog.getByRole('button', { name: 'Import', exact: true }).click()
  await expect(page.getByText(/^Imported recut\.edl: 1 cue begun, 1 moved/u)).toBeVisible()
  await expect(page.getByText(/^cue 1 of 19/u)).toBeVisible()
  expect(await undoCount(page)).toBe(1)
  await expect(page.getByRole('spinbutton', { name: 'saturation' })).toHaveValue('0.500')
  await button(page, /^Undo/u).click()
  await expect(page.getByText(/^cue 1 of 18/u)).toBeVisible()
})

test('real lists of others open; what is refused names its line and changes nothing', async ({
  page,
}) => {
  await openSampleAt(page, /10:00:00:00/u)
  for (const path of ['edl/screening_example.edl', 'otio/simple_cut.otio', 'cdl/cdl_test1.ccc']) {
    await chooseList(page, resolve(INTERCHANGE, path))
    await expect(importDialog(page).getByRole('row')).not.toHaveCount(1)
    await page.keyboard.press('Escape')
    await expect(importDialog(page)).toBeHidden()
  }
  await chooseList(page, resolve(INTERCHANGE, 'clf/illegal-cdl_bad_slope.clf'))
  await expect(page.getByRole('alert')).toContainText(/illegal-cdl_bad_slope\.clf.*line \d+/u)
  expect(await undoCount(page)).toBe(0)
  await chooseList(page, resolve(INTERCHANGE, 'clf/range.clf'))
  const offer = importDialog(page)
  await expect(offer).toContainText('process list')
  await isClean(page)
  await offer.getByRole('button', { name: 'Put it after the base' }).click()
  expect(await undoCount(page)).toBe(1)
  await button(page, 'Prepare').click()
  await expect(page.getByRole('main', { name: 'Prepare' })).toContainText('range')
})

test('another cut of the reel: cues follow their pictures, and undo brings the old scan back', async ({
  page,
}) => {
  const recut = await recutOfSample()
  await openSampleAt(page, /10:00:00:00/u)
  await button(page, 'Prepare').click()
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    button(page, 'Use another scan of the reel…').click(),
  ])
  await chooser.setFiles(recut)
  const asked = page.getByRole('dialog', { name: 'This is not the same scan' })
  await expect(asked).toContainText('has 1247 frames of 768 × 576')
  await isClean(page)
  await asked.getByRole('button', { name: 'Follow the pictures…' }).click()
  const found = page.getByRole('dialog', { name: 'Cues on recut.mp4' })
  await expect(found).toBeVisible({ timeout: 120_000 })
  await expect(found.getByRole('row', { name: /^2 / })).toContainText('30 frames earlier')
  await expect(found.getByRole('row', { name: /^11 / })).toContainText('129 frames earlier')
  await isClean(page)
  await found.getByRole('button', { name: 'Apply' }).click()
  await button(page, 'Rehearse').click()
  await expect(page.getByRole('row', { name: /10:00:03:05/u })).toBeVisible()
  expect(await undoCount(page)).toBe(1)
  await button(page, /^Undo/u).click()
  await expect(page.getByRole('row', { name: /10:00:04:10/u })).toBeVisible()
  await expect(button(page, 'Show the scanned picture')).toBeEnabled()
  await button(page, 'Prepare').click()
  await expect(page.getByText('slack-water-at-skerrow.mp4')).toBeVisible()
})
