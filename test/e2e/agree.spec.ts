import { writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { expect, test } from '@playwright/test'
import { isClean } from '../support/benchPage.ts'

const CLIP = resolve(import.meta.dirname, '../media/numbered/h264-bframes-24.mp4')

test('a pack is made, answered offline, and its answer agrees the cue until a number changes', async ({
  page,
  context,
}, info) => {
  await page.goto('./')
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a reel…' }).click(),
  ])
  await chooser.setFiles(CLIP)
  const steps = page.getByRole('navigation', { name: 'Steps' })
  await steps.getByRole('button', { name: 'Agree' }).click()
  await expect(page.getByText('0 of 1 agreed')).toBeVisible()
  await expect(page.getByRole('region', { name: 'Review pack' })).toContainText(
    /about [\d.]+ [kM]B/u,
  )
  await isClean(page)

  await page.getByText('in motion as well').click()
  await page.getByLabel('For whom').fill('Ines')
  const [pack] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Make the review pack…' }).click(),
  ])
  expect(pack.suggestedFilename()).toBe('h264-bframes-24-review.html')
  const path = info.outputPath('pack.html')
  await pack.saveAs(path)

  const review = await context.newPage()
  review.on('request', (request) => {
    if (!/^(?:file|data|blob):/u.test(request.url())) throw new Error(`It asks ${request.url()}`)
  })
  await review.goto(pathToFileURL(path).href)
  await review.getByLabel('Your name').fill('Ines Varga')
  await review.getByRole('button', { name: 'Play it through' }).click()
  const clip = review.locator('video')
  await expect(clip).toBeVisible()
  expect(await clip.evaluate((video: HTMLVideoElement) => video.error)).toBeNull()
  await review.getByRole('button', { name: 'Agree to all the rest' }).click()
  const [answer] = await Promise.all([
    review.waitForEvent('download'),
    review.getByRole('button', { name: 'Save the answer' }).click(),
  ])
  const answerPath = join(info.outputDir, 'answer.json')
  await answer.saveAs(answerPath)
  await review.close()

  const [answers] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open answers…' }).click(),
  ])
  await answers.setFiles(answerPath)
  const taken = page.getByRole('region', { name: 'Answers to take in' })
  await expect(taken).toContainText('Ines Varga ✓ agreed')
  await expect(taken).toContainText('signed by the pack')
  await isClean(page)
  await taken.getByRole('button', { name: 'Take it in' }).click()
  await expect(page.getByText('1 of 1 agreed')).toBeVisible()

  await steps.getByRole('button', { name: 'Rehearse' }).click()
  const saturation = page.getByRole('spinbutton', { name: 'saturation', exact: true })
  await saturation.fill('0.8')
  await saturation.press('Enter')
  await steps.getByRole('button', { name: 'Agree' }).click()
  await expect(page.getByText('Picture 1: ≠ changed since')).toBeVisible()
  await expect(page.getByRole('region', { name: 'What was said' })).toContainText(
    'saturation from 1 to 0.8',
  )
  await page.keyboard.press('Control+z')
  await expect(page.getByText('1 of 1 agreed')).toBeVisible()

  const foreign = info.outputPath('foreign.json')
  const text = JSON.stringify({ format: 'reelwright-answer', version: 1, answers: [] })
  writeFileSync(foreign, text)
  const [others] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open answers…' }).click(),
  ])
  await others.setFiles(foreign)
  await expect(page.getByRole('alert')).toContainText('In the answer')
})
