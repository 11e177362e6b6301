import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { type BrowserContext, expect, type Page, test } from '@playwright/test'
import { agreementOf } from '../../src/core/agreement/agreementOf.ts'
import { applyAnswers } from '../../src/core/agreement/applyAnswers.ts'
import { packHtml } from '../../src/core/agreement/pack/packHtml.ts'
import { planAnswers } from '../../src/core/agreement/planAnswers.ts'
import { signatureStands } from '../../src/core/agreement/signatureStands.ts'
import { makeSigningKey } from '../../src/core/agreement/signing.ts'
import { readAnswerFile } from '../../src/core/formats/answer/readAnswerFile.ts'
import { applyChange } from '../../src/core/job/change.ts'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import { isClean } from '../support/benchPage.ts'
import { PACK_ID } from '../support/sampleAnswerFile.ts'
import { cueId, REEL_ID } from '../support/sampleJob.ts'
import { packJob, samplePack } from '../support/samplePack.ts'

const ROOT = resolve(import.meta.dirname, '../..')

let folder = ''
let address = ''
let publicKey = ''

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-review-'))
  const key = await makeSigningKey()
  if (key?.algorithm !== 'Ed25519') throw new Error('no key')
  publicKey = key.publicKey
  const { algorithm, privateKey } = key
  const page = {
    script: readFileSync(join(ROOT, '.cache/review/review.js'), 'utf8'),
    style: readFileSync(join(ROOT, 'src/review/review.css'), 'utf8'),
  }
  const path = join(folder, 'pack.html')
  writeFileSync(path, packHtml(samplePack({ key: { algorithm, privateKey } }), page))
  address = pathToFileURL(path).href
})
test.afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The pack opened as a file with the network off; whatever it asks for elsewhere is a fault. */
const opened = async (context: BrowserContext, isAttacked = false): Promise<Page> => {
  await context.setOffline(true)
  const page = await context.newPage()
  page.on('request', (request) => {
    if (!/^(?:file|data|blob):/u.test(request.url()) && !isAttacked)
      throw new Error(`It asks ${request.url()}`)
  })
  page.on('console', (message) => {
    if (message.type() === 'error' && !isAttacked) throw new Error(message.text())
  })
  await page.goto(address)
  await expect(page.getByRole('heading', { name: 'Orlop', exact: true })).toBeVisible()
  return page
}

const picture = (page: Page, number: number) =>
  page.getByRole('article', { name: `Picture ${number}`, exact: true })

/** Tabs until what has the focus is called so. */
const tabTo = async (page: Page, name: string, within = 200): Promise<void> => {
  for (let i = 0; i < within; i++) {
    await page.keyboard.press('Tab')
    const words = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement & { labels?: NodeListOf<HTMLElement> }
      return at.labels?.[0]?.textContent ?? at.textContent ?? ''
    })
    if (words.includes(name)) return
  }
  throw new Error(`Tab does not lead to “${name}”`)
}

test('is answered by keyboard alone, offline, and its answer is taken into the job', async ({
  context,
}) => {
  const page = await opened(context)
  await isClean(page)
  await tabTo(page, 'Your name')
  await page.keyboard.type('Ines Varga')
  await tabTo(page, 'Agree to the rest of this scene')
  await page.keyboard.press('Enter')
  await expect(picture(page, 2)).toContainText('✓ agreed')
  await tabTo(page, 'Before and after')
  await page.keyboard.press('End')
  await expect(picture(page, 1).getByLabel('Before and after')).toHaveValue('100')
  for (const _ of [1, 2]) await tabTo(page, 'What should be otherwise')
  await tabTo(page, 'as it is shown above')
  await page.keyboard.press('ArrowDown')
  await tabTo(page, '✓ agreed')
  await page.keyboard.press('Space')
  for (const _ of [1, 2]) await tabTo(page, 'What should be otherwise')
  await page.keyboard.type('The quay is too dark.')
  await expect(picture(page, 4).getByRole('status')).toHaveText('✎ changes asked')
  await tabTo(page, 'Save the answer')
  const [saved] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')])
  expect(saved.suggestedFilename()).toBe('Orlop answer Ines Varga.json')
  await isClean(page)

  const file = readAnswerFile(readFileSync(await saved.path(), 'utf8'))
  if (!file.ok) throw new Error(file.problems[0].says)
  const pack = { id: PACK_ID, madeAt: '2026-11-27T09:00:00.000Z', madeFor: '', cues: 4 }
  const job = {
    ...packJob(),
    packs: { [PACK_ID]: { ...pack, key: { algorithm: 'Ed25519' as const, publicKey } } },
  }
  const plan = planAnswers(job, [file.value])
  if (!plan.ok) throw new Error(plan.problems[0].says)
  for (const { cue, answer } of plan.value.rows) {
    expect(await signatureStands(job, cue, answer)).toBe('right')
    expect(await signatureStands(job, cue, { ...answer, note: 'x' })).toBe('wrong')
  }
  const change = applyAnswers(job, plan.value, new Map())
  if (!change.ok) throw new Error(change.problems[0].says)
  const after = applyChange(job, change.value.change)
  const cues = cuesOfReel(after, REEL_ID)
  expect(cues.map((cue) => agreementOf(after, cue))).toEqual(['agreed', 'agreed', 'asked', 'asked'])
  expect(after.cues[cueId(3)]?.answers).toMatchObject([{ says: 'agreed', alternate: 'warm' }])
  expect(after.cues[cueId(4)]?.answers).toMatchObject([
    { by: 'Ines Varga', note: 'The quay is too dark.' },
  ])
})

test('a line is drawn on the picture, and what was said is there when the page is opened again', async ({
  context,
}) => {
  const page = await opened(context)
  await page.getByLabel('Your name').fill('Joren')
  const first = picture(page, 1)
  await first.getByRole('button', { name: 'Draw on the picture' }).click()
  await first.locator('.picture').scrollIntoViewIfNeeded()
  const box = await first.locator('.picture').boundingBox()
  if (!box) throw new Error('no picture')
  await page.mouse.move(box.x + box.width / 4, box.y + box.height / 2)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, { steps: 4 })
  await page.mouse.up()
  await expect(first.getByRole('status')).toHaveText('✎ changes asked')
  await page.reload()
  await expect(page.getByLabel('Your name')).toHaveValue('Joren')
  await page.getByRole('button', { name: 'Show it as text' }).click()
  const file = readAnswerFile(await page.getByLabel('Copy all of this into a mail').inputValue())
  expect(file.ok && file.value.answers).toMatchObject([{ answer: { by: 'Joren', frame: 3 } }])
  const marks = file.ok ? (file.value.answers[0]?.answer.marks ?? []) : []
  expect(marks).toHaveLength(1)
  expect(marks[0]?.[0]?.[0]).toBeCloseTo(0.25, 2)
  expect(marks[0]?.at(-1)?.[0]).toBeCloseTo(0.5, 2)
  await first.getByRole('button', { name: 'Take the last line back' }).click()
  await expect(first.getByRole('button', { name: 'Take the last line back' })).toBeHidden()
})

test('fits a phone, and plays through', async ({ context }) => {
  const page = await opened(context)
  await page.setViewportSize({ width: 390, height: 844 })
  await isClean(page)
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
  await page.getByRole('button', { name: 'Play it through' }).click()
  await expect(page.getByRole('button', { name: 'Stop playing' })).toBeVisible()
  await expect(picture(page, 4)).toHaveClass(/is-playing/u)
  await expect(page.getByRole('button', { name: 'Play it through' })).toBeVisible()
})

test('what gets into the page can neither run nor reach anything', async ({ context }) => {
  const page = await opened(context, true)
  const outcome = await page.evaluate(async () => {
    const script = document.createElement('script')
    script.textContent = 'document.title = "ran"'
    document.body.append(script)
    const refused: string[] = []
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => {
      refused.push(effectiveDirective)
    })
    await fetch('https://example.org/').catch(() => undefined)
    await new Promise((resolve) => setTimeout(resolve, 100))
    return { title: document.title, refused }
  })
  expect(outcome).toEqual({
    title: 'Orlop: for agreement',
    refused: ['script-src-elem', 'connect-src'],
  })
})
