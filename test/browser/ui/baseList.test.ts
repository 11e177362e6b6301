import { createElement } from 'react'
import { afterEach, expect, it } from 'vitest'
import { page } from 'vitest/browser'
import { setReel } from '../../../src/core/job/commands/setReel.ts'
import { perform, undo } from '../../../src/store/document.ts'
import { reelOf } from '../../../src/store/queries.ts'
import { useAppState } from '../../../src/ui/appContext.ts'
import { BaseSection } from '../../../src/ui/prepare/BaseSection.tsx'
import { MADE_LISTS } from '../../support/madeLists.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const Section = () => {
  const reel = useAppState(reelOf)
  return reel ? createElement(BaseSection, { reel }) : null
}

const opened = () => {
  const app = onScreen(Section)
  app.store.setState({ media: 'missing' })
  const reel = () => {
    const found = reelOf(app.store.getState())
    if (!found) throw new Error('no reel')
    return found
  }
  return { ...app, reel }
}

const section = () => page.getByRole('region', { name: 'Base' })

it('a reel without a list says so, and asks for one', async () => {
  const { services } = opened()
  await expect.element(page.getByRole('heading', { name: 'Base list' })).toBeVisible()
  await expect.element(page.getByRole('button', { name: 'Take the list out' })).toBeDisabled()
  await page.getByRole('button', { name: 'Choose a list…' }).click()
  expect(services.pickBaseList).toHaveBeenCalledOnce()
})

it('the list of the base is told by its name and steps, taken out, and brought back by undo', async () => {
  const { store, reel } = opened()
  const list = MADE_LISTS['a matrix, a curve and a cube'] ?? null
  perform(store, (job) =>
    setReel(job, reel().id, (before) => ({ ...before, base: { ...before.base, list } })),
  )
  await expect
    .element(section())
    .toHaveTextContent('“several”: matrix, curve of 1024 places, cube of 9³, upper limit')
  await page.getByRole('button', { name: 'Take the list out' }).click()
  expect(reel().base.list).toBeNull()
  undo(store)
  expect(reel().base.list).toBe(list)
  await expect.element(page.getByRole('button', { name: 'Choose another list…' })).toBeVisible()
})
