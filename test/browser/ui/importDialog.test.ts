import axe from 'axe-core'
import { afterEach, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import type { Decision, DecisionList } from '../../../src/core/formats/decisionList.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { undo } from '../../../src/store/document.ts'
import { offerImport } from '../../../src/store/importing.ts'
import { offerProcess } from '../../../src/store/processOffer.ts'
import { cuesOf, jobOf, reelOf } from '../../../src/store/queries.ts'
import { ImportDialog } from '../../../src/ui/import/ImportDialog.tsx'
import { ProcessDialog } from '../../../src/ui/import/ProcessDialog.tsx'
import '../../../src/ui/styles/import.css'
import { sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const START = sampleReel().startCount

const decision = (from: number, to: number, line: number): Decision => ({
  name: `Take ${line}`,
  source: 'ORLOP',
  sourceSpan: undefined,
  recordSpan: { from: START + from, to: START + to },
  transition: { kind: 'cut', frames: 0 },
  values: { grade: { ...IDENTITY_GRADE, saturation: 0.5 } },
  line,
  foreign: [],
})

const listOf = (decisions: readonly Decision[]): DecisionList => ({
  format: 'edl',
  title: 'Orlop cut',
  rate: rate(25),
  decisions,
  foreign: [],
  notTaken: [
    { code: 'malformed', says: 'The power is 0, which no grade can have.', at: { line: 7 } },
  ],
})

/** One matches, one moves, one begins, one lies outside the reel. */
const LIST = listOf([
  decision(0, 103, 4),
  decision(103, 180, 5),
  decision(180, 250, 6),
  decision(5000, 5100, 7),
])

const dialog = () => page.getByRole('dialog', { name: 'Import cut.edl' })

const rows = () => dialog().getByRole('row').elements().length - 1

const shown = (list = LIST) => {
  const app = onScreen(ImportDialog)
  offerImport(app.store, 'cut.edl', list)
  return app
}

it('tells of each decision what becomes of it, by a word, a shape and its timecodes', async () => {
  shown()
  await expect.element(dialog()).toBeVisible()
  await expect.element(dialog()).toHaveTextContent('“Orlop cut” · 4 decisions · 25 frames/s')
  const row = (name: RegExp) => dialog().getByRole('row', { name })
  await expect.element(row(/matches/u)).toHaveTextContent('10:00:00:00')
  await expect.element(row(/moves/u)).toHaveTextContent('→moves2')
  await expect.element(row(/moves/u)).toHaveTextContent('10:00:04:00 → 10:00:04:03')
  await expect.element(row(/begins/u)).toHaveTextContent('new')
  await expect.element(row(/conflicts/u)).toHaveTextContent('outside the reel')
  const { violations } = await axe.run(document.body, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
  })
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
})

it('is imported as one step, which undo takes back', async () => {
  const app = shown()
  await dialog().getByRole('button', { name: 'Import', exact: true }).click()
  await expect.element(dialog()).not.toBeInTheDocument()
  expect(cuesOf(app.store.getState()).map(({ first }): number => first)).toEqual([
    0, 103, 180, 250, 400,
  ])
  undo(app.store)
  expect(jobOf(app.store.getState())).toEqual(sampleJob())
})

it.each(['{Escape}', 'Cancel'])('%s puts it away and changes nothing', async (how) => {
  const app = shown()
  await expect.element(dialog()).toBeVisible()
  if (how === 'Cancel') await dialog().getByRole('button', { name: how }).click()
  else await userEvent.keyboard(how)
  await expect.element(dialog()).not.toBeInTheDocument()
  expect(jobOf(app.store.getState())).toEqual(sampleJob())
  expect(app.store.getState().importing).toBeUndefined()
})

it('choices are made by the keyboard alone, and the rows follow at once', async () => {
  const app = shown()
  const first = dialog().getByRole('radio', { name: 'where its times say' })
  await expect.element(first).toBeChecked()
  first.element().focus()
  await userEvent.keyboard('{ArrowDown}{ArrowDown}')
  const field = dialog().getByRole('textbox', { name: /^Timecode, feet and frames/u })
  await userEvent.keyboard('{Tab}')
  await expect.element(field).toHaveFocus()
  await userEvent.keyboard('{Control>}a{/Control}10:00:00:20{Enter}')
  expect(app.store.getState().importing?.options.startsAt).toBe(frame(20))
  await expect
    .element(dialog().getByRole('row', { name: /Take 4/u }))
    .toHaveTextContent('10:00:00:20')
  await userEvent.keyboard('{Control>}a{/Control}99:00:00:00{Enter}')
  await expect.element(field).toHaveAttribute('aria-invalid', 'true')
  expect(app.store.getState().importing?.options.startsAt).toBe(frame(20))
})

it('while no place is written nothing can be imported, and it says why below', async () => {
  const app = shown()
  const go = dialog().getByRole('button', { name: 'Import', exact: true })
  const field = dialog().getByRole('textbox', { name: /^Timecode, feet and frames/u })
  const take = dialog().getByRole('group', { name: 'Take' })
  await field.fill('12+08')
  expect(app.store.getState().importing?.options.startsAt).toBe(frame(488))
  await expect.element(go).toBeEnabled()
  const { top } = take.element().getBoundingClientRect()
  await field.fill('abc')
  await expect.element(go).toBeDisabled()
  await expect.element(field).toHaveAccessibleDescription(/Write a timecode/u)
  await expect.element(dialog().getByRole('status')).toHaveTextContent('▲ Write a timecode')
  expect(take.element().getBoundingClientRect().top).toBe(top)
  expect(getComputedStyle(go.element()).borderTopStyle).toBe('dashed')
  expect(getComputedStyle(go.element()).cursor).toBe('not-allowed')
  await dialog().getByRole('radio', { name: 'where its times say' }).click()
  await expect.element(go).toBeEnabled()
  await expect.element(field).toHaveValue('10:00:00:00')
  expect(app.store.getState().importing?.options.startsAt).toBeNull()
})

it('with text of 200 % its rows and its buttons are in sight', async () => {
  const { innerWidth, innerHeight } = window
  await page.viewport(720, 450)
  try {
    shown()
    const isInSight = (element: Element) => {
      const { left, right, top, bottom } = element.getBoundingClientRect()
      return left >= 0 && top >= 0 && right <= 720 && bottom <= 450
    }
    const first = dialog().getByRole('row', { name: /Take 4/u })
    await expect.element(first).toBeVisible()
    const name = first.element().querySelector('td:nth-child(4)')
    expect(name && isInSight(name)).toBe(true)
    for (const label of ['Import', 'Cancel'])
      expect(isInSight(dialog().getByRole('button', { name: label, exact: true }).element())).toBe(
        true,
      )
  } finally {
    await page.viewport(innerWidth, innerHeight)
  }
})

it('names that differ at their end are cut in the middle', async () => {
  const reel =
    'A camera original of the harbour at night, with a name much longer than its column, '
  shown(listOf([{ ...decision(0, 103, 4), name: `${reel} slate 12 take 3` }]))
  const cell = dialog().getByRole('cell', { name: /slate 12 take 3/u })
  await expect.element(cell).toHaveAttribute('title', `${reel} slate 12 take 3`)
  const [head, tail] = cell.element().querySelectorAll('.middle-cut > span')
  const right = cell.element().getBoundingClientRect().right
  expect(tail?.getBoundingClientRect().right).toBeLessThanOrEqual(right)
  expect(head && head.scrollWidth > head.clientWidth).toBe(true)
  expect(tail && tail.scrollWidth <= tail.clientWidth).toBe(true)
})

it('with neither places nor grades nothing can be imported, and it says why', async () => {
  shown()
  const go = dialog().getByRole('button', { name: 'Import', exact: true })
  await dialog()
    .getByRole('checkbox', { name: /^places/u })
    .click()
  await expect.element(go).toBeEnabled()
  await dialog()
    .getByRole('checkbox', { name: /^grades/u })
    .click()
  await expect.element(go).toBeDisabled()
  await expect.element(dialog()).toHaveTextContent('Take places, grades, or both.')
})

it('the counts list only their own decisions', async () => {
  shown()
  await expect.element(dialog()).toBeVisible()
  expect(rows()).toBe(4)
  const conflicts = dialog().getByRole('button', { name: '1 conflicts' })
  await conflicts.click()
  await expect.element(conflicts).toHaveAttribute('aria-pressed', 'true')
  expect(rows()).toBe(1)
  await dialog().getByRole('button', { name: '4 in all' }).click()
  expect(rows()).toBe(4)
})

it('what is not taken is told with its line, and the cues no decision is about', async () => {
  shown()
  await dialog()
    .getByRole('tab', { name: /^Not taken \d/u })
    .click()
  const told = dialog().getByRole('region', { name: 'What is not taken' })
  await expect.element(told).toHaveTextContent('line 7The power is 0')
  await dialog()
    .getByRole('tab', { name: /^Cues left/u })
    .click()
  await expect
    .element(dialog().getByRole('region', { name: 'Cues left as they are' }))
    .toHaveTextContent(/cues? [34]/u)
})

it('of ten thousand decisions only those in view are drawn, wherever it is scrolled', async () => {
  const many = Array.from({ length: 10_000 }, (_, i) => decision(i, i + 1, i + 4))
  shown(listOf(many))
  const scroller = dialog().getByRole('region', { name: 'Decisions' })
  await expect.element(scroller).toBeVisible()
  await expect.element(dialog().getByRole('table')).toHaveAttribute('aria-rowcount', '10001')
  expect(rows()).toBeLessThan(60)
  scroller.element().scrollTop = 1e9
  await expect.element(dialog().getByRole('row', { name: 'Take 10003' })).toBeVisible()
  expect(rows()).toBeLessThan(60)
})

it('a process list that is a grade goes to the cue or after the base', async () => {
  const cdl = {
    slope: [0.9, 0.9, 0.9],
    offset: [0, 0, 0],
    power: [1, 1, 1],
    saturation: 1,
  } as const
  const list = {
    name: 'Warm',
    steps: [{ kind: 'cdl', style: 'forward-no-clamp', cdl }],
  } as const
  const app = onScreen(ProcessDialog)
  const asked = page.getByRole('dialog', { name: 'Import warm.clf' })
  offerProcess(app.store, 'warm.clf', list, [])
  await expect.element(asked).toHaveTextContent('of 1 step: ASC CDL.')
  await asked.getByRole('button', { name: 'Give its grade to cue 1' }).click()
  await expect.element(asked).not.toBeInTheDocument()
  expect(cuesOf(app.store.getState())[0]?.grade.gain[0]).toBeCloseTo(0.9, 12)
  offerProcess(app.store, 'warm.clf', list, [])
  await expect.element(asked).toHaveTextContent('of 1 step: ASC CDL.')
  await asked.getByRole('button', { name: 'Put it after the base' }).click()
  await expect.element(asked).not.toBeInTheDocument()
  expect(reelOf(app.store.getState())?.base.list).toEqual(list)
})
