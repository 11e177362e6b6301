import axe from 'axe-core'
import { afterEach, expect, it, vi } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { agreementOf } from '../../../src/core/agreement/agreementOf.ts'
import { planAnswers } from '../../../src/core/agreement/planAnswers.ts'
import { setGrade } from '../../../src/core/job/commands/setGrade.ts'
import { setScene } from '../../../src/core/job/commands/setScene.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import { type PackShape, setAgreeing } from '../../../src/store/agreeing.ts'
import { perform, undo } from '../../../src/store/document.ts'
import { jobOf } from '../../../src/store/queries.ts'
import { AgreeAnswer } from '../../../src/ui/agree/AgreeAnswer.tsx'
import { AgreeHistory } from '../../../src/ui/agree/AgreeHistory.tsx'
import { AgreeList } from '../../../src/ui/agree/AgreeList.tsx'
import { AnswersCard } from '../../../src/ui/agree/AnswersCard.tsx'
import { PackCard } from '../../../src/ui/agree/PackCard.tsx'
import { TakenInPart } from '../../../src/ui/agree/TakenInPart.tsx'
import type { App } from '../../../src/ui/appContext.ts'
import '../../../src/ui/styles/agree.css'
import { answerFile, packAnswer } from '../../support/sampleAnswerFile.ts'
import { cueId, REEL_ID } from '../../support/sampleJob.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const shown = () => {
  const app = onScreen(AgreeList, AgreeAnswer, AgreeHistory, TakenInPart, PackCard, AnswersCard)
  Object.assign(app.services.stills, {
    get: () => undefined,
    nearest: () => undefined,
    request: () => {},
    subscribe: () => () => {},
  })
  const review = {
    estimate: vi.fn(),
    make: vi.fn(),
    stop: vi.fn(),
    pickAnswers: vi.fn(async () => {}),
    readAnswer: vi.fn(async () => {}),
    apply: vi.fn(),
    leave: vi.fn(),
  }
  Object.assign(app.services.review, review)
  return { app, review }
}

const standings = ({ store }: App) => {
  const job = jobOf(store.getState())
  return job ? cuesOfReel(job, REEL_ID).map((cue) => agreementOf(job, cue)) : []
}
const button = (name: string | RegExp) => page.getByRole('button', { name })

it('agrees to a picture, a scene and the rest, in the name that was given, each one undo step', async () => {
  const { app } = shown()
  perform(app.store, (job) => setScene(job, [cueId(1), cueId(2)], '12'))
  await page.getByLabelText('Your name').fill('Ines')
  await page.getByRole('button', { name: '✓ agreed', exact: true }).click()
  expect(standings(app)).toEqual(['agreed', 'open', 'open', 'open'])
  await button('Agree to the rest').first().click()
  expect(standings(app)).toEqual(['agreed', 'agreed', 'open', 'open'])
  await button('Agree to all the rest').click()
  expect(standings(app)).toEqual(['agreed', 'agreed', 'agreed', 'agreed'])
  await expect.element(page.getByText('4 of 4 agreed')).toBeVisible()
  const job = jobOf(app.store.getState())
  expect(job?.cues[cueId(4)]?.answers).toMatchObject([{ by: 'Ines', says: 'agreed' }])
  undo(app.store)
  expect(standings(app)).toEqual(['agreed', 'agreed', 'open', 'open'])
})

it('asks for changes with a note and lines, which are kept with the frame they are on', async () => {
  const { app } = shown()
  await page.getByLabelText('What should be otherwise').fill(' The sky is too blue. ')
  setAgreeing(app.store, { drawing: { marks: [[[0.1, 0.2]]], frame: 0, isOpen: true } })
  await button('✎ changes asked').click()
  const job = jobOf(app.store.getState())
  expect(job?.cues[cueId(1)]?.answers).toMatchObject([
    { says: 'asked', note: 'The sky is too blue.', marks: [[[0.1, 0.2]]], frame: 0 },
  ])
  await expect.element(page.getByText('“The sky is too blue.”')).toBeVisible()
  await button('take it back').click()
  expect(standings(app)[0]).toBe('open')
})

it('tells in words what was changed since', async () => {
  const { app } = shown()
  await page.getByRole('button', { name: '✓ agreed', exact: true }).click()
  perform(app.store, (job) => setGrade(job, [cueId(1)], (grade) => ({ ...grade, saturation: 0.5 })))
  await expect.element(page.getByText('saturation from 1 to 0.5')).toBeVisible()
  await expect.element(page.getByText('Picture 1: ≠ changed since')).toBeVisible()
})

it('asks whose word holds where reviewers differ, and takes in only then', async () => {
  const { app, review } = shown()
  const job = jobOf(app.store.getState())
  if (!job) throw new Error('no job')
  const given = (by: string, says: 'agreed' | 'asked') =>
    answerFile([{ cue: cueId(2), answer: packAnswer(job, cueId(2), { by, says }) }])
  const plan = planAnswers(job, [given('Ines', 'agreed'), given('Joren', 'asked')])
  if (!plan.ok) throw new Error('no plan')
  const takenIn = { plan: plan.value, choices: new Map() }
  setAgreeing(app.store, { takenIn: { ...takenIn, signatures: ['not signed', 'right'] } })
  const part = page.getByRole('region', { name: 'Answers to take in' })
  await expect.element(part).toHaveTextContent('reviewers differ on 1')
  await expect.element(part).toHaveTextContent('signed by the pack')
  await expect.element(button('Take all 2 in')).toBeDisabled()
  await part.getByRole('radio', { name: /Joren/u }).click()
  await button('Take all 2 in').click()
  expect(review.apply).toHaveBeenCalledOnce()
  expect(app.store.getState().agreeing.takenIn?.choices.get(cueId(2))).toBe('Joren')
  const choices = new Map([[cueId(2), 'Joren']])
  setAgreeing(app.store, { takenIn: { ...takenIn, choices, signatures: ['right', 'wrong'] } })
  await expect.element(part).toHaveTextContent('A signature is wrong')
  await expect.element(button('Take all 2 in')).toBeDisabled()
})

it('makes a pack of the pictures that are wanted, and says about how large it will be', async () => {
  const { app, review } = shown()
  await page.getByRole('button', { name: '✓ agreed', exact: true }).click()
  const card = page.getByRole('region', { name: 'Review pack' })
  await page.getByLabelText('Pictures', { exact: true }).selectOptions('not-agreed')
  const ids = [2, 3, 4].map(cueId)
  const shape = { cues: ids, clipSeconds: 0, hasStills: false }
  await vi.waitFor(() => expect(review.estimate).toHaveBeenLastCalledWith(shape))
  const of = review.estimate.mock.lastCall?.[0] as PackShape
  setAgreeing(app.store, { estimate: { bytes: 2_500_000, of } })
  await expect.element(card).toHaveTextContent('3 pictures, about 2.5 MB')
  await page.getByLabelText('For whom').fill('Ines')
  await button('Make the review pack').click()
  expect(review.make).toHaveBeenCalledWith({
    ...{ cues: ids, madeFor: 'Ines', hasStills: false, clipSeconds: 0 },
  })
})

it('reads an answer that is pasted', async () => {
  const { review } = shown()
  await button('paste one from a mail').click()
  await page.getByLabelText('The text of the answer').fill('{"format":"reelwright-answer"}')
  await button('Read it').click()
  expect(review.readAnswer).toHaveBeenCalledWith('{"format":"reelwright-answer"}')
})

it('is worked by keyboard and has nothing that axe objects to', async () => {
  const { app } = shown()
  await page.getByLabelText('Your name').click()
  await userEvent.keyboard('Ines')
  for (let i = 0; i < 12; i++) {
    await userEvent.tab()
    if (document.activeElement?.textContent === '✓ agreed') break
  }
  await userEvent.keyboard('{Enter}')
  expect(standings(app)[0]).toBe('agreed')
  const found = await axe.run(document.body, {
    rules: {
      ...{ 'color-contrast': { enabled: false }, region: { enabled: false } },
      ...{ 'heading-order': { enabled: false }, 'page-has-heading-one': { enabled: false } },
    },
  })
  expect(found.violations.map(({ id }) => id)).toEqual([])
})
