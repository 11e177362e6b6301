import { afterEach, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { pickPlace } from '../../../src/store/picking.ts'
import { offerProposal } from '../../../src/store/proposal.ts'
import { currentCue } from '../../../src/store/queries.ts'
import { ProposalBar } from '../../../src/ui/bench/ProposalBar.tsx'
import { SolveBar } from '../../../src/ui/bench/SolveBar.tsx'
import type { MatchReference } from '../../../src/ui/solvers.ts'
import { cueId } from '../../support/sampleJob.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const bar = () => page.getByRole('region', { name: /^Proposal/u })

const offered = {
  label: 'Bring inside',
  says: ['Changes: saturation 1.000 → 0.800.'],
  change: { kind: 'grade', cue: cueId(1), grade: { ...IDENTITY_GRADE, saturation: 0.8 } },
} as const

it('what is proposed is said, and kept by Enter at once, as its button has the focus', async () => {
  const app = onScreen(ProposalBar)
  await expect.element(bar()).not.toBeInTheDocument()
  offerProposal(app.store, offered)
  await expect.element(bar()).toHaveTextContent('saturation')
  await expect.element(page.getByRole('button', { name: /^Keep/u })).toHaveFocus()
  await userEvent.keyboard('{Enter}')
  await expect.element(bar()).not.toBeInTheDocument()
  expect(currentCue(app.store.getState())?.grade.saturation).toBe(0.8)
})

it('left, it changes nothing', async () => {
  const app = onScreen(ProposalBar)
  offerProposal(app.store, offered)
  await page.getByRole('button', { name: /^Leave/u }).click()
  await expect.element(bar()).not.toBeInTheDocument()
  expect(currentCue(app.store.getState())?.grade).toEqual(IDENTITY_GRADE)
})

it('Escape leaves it, and Enter keeps it where nothing else has the focus', async () => {
  const app = onScreen(ProposalBar)
  offerProposal(app.store, offered)
  await expect.element(page.getByRole('button', { name: /^Keep/u })).toHaveFocus()
  await userEvent.keyboard('{Escape}')
  await expect.element(bar()).not.toBeInTheDocument()
  expect(currentCue(app.store.getState())?.grade).toEqual(IDENTITY_GRADE)
  offerProposal(app.store, offered)
  await expect.element(bar()).toBeVisible()
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
  await userEvent.keyboard('{Enter}')
  expect(currentCue(app.store.getState())?.grade.saturation).toBe(0.8)
})

it('what changes nothing cannot be kept', async () => {
  const app = onScreen(ProposalBar)
  offerProposal(app.store, { ...offered, change: { kind: 'none', isLooking: false } })
  await expect.element(bar()).toHaveTextContent('nothing is changed')
  await expect.element(page.getByRole('button', { name: /^Keep/u })).not.toBeInTheDocument()
})

it('picking says how, takes the last place back, and is ended', async () => {
  const app = onScreen(SolveBar, ProposalBar)
  await page.getByRole('button', { name: /^Neutral here/u }).click()
  await expect.element(bar()).toHaveTextContent('one to three places')
  pickPlace(app.store, { x: 0.4, y: 0.4 })
  offerProposal(app.store, offered)
  await page.getByRole('button', { name: 'Take back place 1' }).click()
  expect(app.store.getState().pointing.picks).toEqual([])
  await page.getByRole('button', { name: /^Leave/u }).click()
  expect(app.store.getState().pointing.mode).toBe('read')
  await expect.element(bar()).not.toBeInTheDocument()
})

it('a reference is chosen from a list or by the number of its cue', async () => {
  const app = onScreen(SolveBar)
  const asked: MatchReference[] = []
  Object.assign(app.services.solve, {
    matchTo: (reference: MatchReference) => asked.push(reference),
  })
  app.store.setState({ playhead: frame(120) })
  await page.getByRole('button', { name: 'Match to…' }).click()
  const dialog = page.getByRole('dialog', { name: 'Match the cue to' })
  await dialog.getByRole('button', { name: /before this one/u }).click()
  await expect.element(dialog).not.toBeInTheDocument()
  await page.getByRole('button', { name: 'Match to…' }).click()
  await dialog.getByRole('spinbutton').fill('4')
  await userEvent.keyboard('{Enter}')
  await dialog.getByRole('button', { name: 'Match', exact: true }).click()
  await expect.element(dialog).not.toBeInTheDocument()
  expect(asked).toEqual([
    { kind: 'cue', id: cueId(1) },
    { kind: 'cue', id: cueId(4) },
  ])
})
