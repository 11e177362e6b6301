import { execFileSync } from 'node:child_process'
import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import { isClean } from '../support/benchPage.ts'

const CLIP = resolve(import.meta.dirname, '../media/numbered/h264-bframes-24.mp4')

const openClip = async (page: Page): Promise<void> => {
  await page.goto('./')
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a reel…' }).click(),
  ])
  await chooser.setFiles(CLIP)
  await expect(page.getByRole('navigation', { name: 'Steps' })).toBeVisible()
}

const line = (page: Page, name: string) => page.getByRole('listitem', { name, exact: true })

const giveReason = async (page: Page, name: string, reason: string): Promise<void> => {
  await line(page, name).getByRole('button', { name: 'write a reason…' }).click()
  await line(page, name).getByLabel('Why the pass is made all the same').fill(reason)
  await line(page, name).getByRole('button', { name: 'Keep the reason' }).click()
}

test('a reel is transferred to a video that is read back, recorded, and told in the job', async ({
  page,
}) => {
  await openClip(page)
  await page.getByRole('button', { name: 'Transfer', exact: true }).click()
  const make = page.getByRole('button', { name: 'Make the transfer' })
  await expect(make).toBeDisabled()
  await expect(line(page, 'Line-up')).toContainText('No line-up of the scanner is logged')
  await isClean(page)

  await page.getByLabel('What was set and read').fill('Open gate at 95 %, differences nulled.')
  await page.getByRole('button', { name: 'Log the line-up' }).click()
  await expect(line(page, 'Line-up')).toContainText('A line-up is logged')
  await page.getByRole('button', { name: 'Take the checksum' }).click()
  await expect(line(page, 'Scan')).toContainText('has the checksum that the job has')
  await line(page, 'Agreement').getByText('every cue is to be agreed').click()
  await expect(line(page, 'Agreement')).toContainText('1 cue is not agreed')
  await giveReason(page, 'Agreement', 'Numbers to be read, not a picture to be shown.')
  await expect(line(page, 'Agreement')).toContainText('passed with a reason')

  await page.getByLabel('Format').selectOption('h264')
  await page.getByLabel('Slate, seconds').fill('1')
  await page.getByLabel('Slate, seconds').press('Enter')
  await expect(make).toBeEnabled()
  const [download] = await Promise.all([page.waitForEvent('download'), make.click()])
  await expect(page.getByRole('region', { name: 'Passes made' })).toContainText('84 frames')
  const findings = page.getByRole('region', { name: 'Passes made' })
  await expect(findings).toContainText('84 frames, as planned')
  await expect(findings).toContainText('has its values from the first frame to the last')
  await expect(findings).toContainText('No limit of flashes or stripes is passed')
  await isClean(page)

  const path = await download.path()
  const probed = execFileSync('ffprobe', [
    ...['-v', 'error', '-count_frames', '-select_streams', 'v', '-of', 'json'],
    ...['-show_entries', 'stream=nb_read_frames,color_range,color_space,r_frame_rate', path],
  ]).toString()
  expect(JSON.parse(probed)).toMatchObject({
    streams: [
      { nb_read_frames: '84', color_range: 'tv', color_space: 'bt709', r_frame_rate: '24/1' },
    ],
  })

  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Save/u }).first().click(),
  ])
  const job = readJob(await readFile(await saved.path(), 'utf8'))
  expect(job.ok && Object.values(job.value.passes)).toMatchObject([
    {
      output: { frames: 84, files: 1 },
      overrides: [{ check: 'agreed', reason: expect.stringContaining('Numbers') }],
    },
  ])
})

test('the whole reel is watched for flashes, with the caution', async ({ page }) => {
  await openClip(page)
  await page.getByRole('button', { name: 'Transfer', exact: true }).click()
  const card = page.getByRole('region', { name: 'Flashes', exact: true })
  await expect(card).toContainText('does not replace')
  await card.getByRole('button', { name: 'Watch the reel' }).click()
  await expect(card).toContainText('No limit of flashes or stripes is passed')
  await expect(card.getByRole('img')).toBeVisible()
  await isClean(page)
})
