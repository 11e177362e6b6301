import axe from 'axe-core'
import { afterEach, expect, it, vi } from 'vitest'
import { page } from 'vitest/browser'
import { ReportCard } from '../../../src/ui/handover/ReportCard.tsx'
import type { ReportOptions } from '../../../src/ui/services.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const save = () => page.getByRole('button', { name: 'Save the report' })

/** The card, with a report that is being made until it is told to be done. */
const cardMaking = () => {
  const app = onScreen(ReportCard)
  let options: ReportOptions | undefined
  let finish: () => void = () => {}
  vi.mocked(app.services.saveReport).mockImplementation((asked) => {
    options = asked
    return new Promise((done) => {
      finish = done
      asked.signal.addEventListener('abort', () => done())
    })
  })
  return { app, options: () => options, finish: () => finish() }
}

it('saves the report as asked, telling in words how far it is', async () => {
  const { options, finish } = cardMaking()
  await page.getByLabelText(/^with the checksum of the scan/u).click()
  await save().click()
  expect(options()).toMatchObject({ wantsChecksum: true })
  await expect.element(save()).toBeDisabled()
  options()?.onProgress('Pictures of cue 3 of 4')
  await expect.element(page.getByRole('status')).toHaveTextContent('Pictures of cue 3 of 4')
  finish()
  await expect.element(save()).toBeEnabled()
  await expect.element(page.getByRole('status')).toHaveTextContent(/^$/u)
})

it('can be stopped, and begun again', async () => {
  const { app, options } = cardMaking()
  await save().click()
  expect(options()).toMatchObject({ wantsChecksum: false })
  await page.getByRole('button', { name: 'Stop' }).click()
  expect(options()?.signal.aborted).toBe(true)
  await save().click()
  expect(app.services.saveReport).toHaveBeenCalledTimes(2)
  expect(options()?.signal.aborted).toBe(false)
})

it('is stopped when the page is left', async () => {
  const { options } = cardMaking()
  await save().click()
  clearScreen()
  await expect.poll(() => options()?.signal.aborted).toBe(true)
})

it('says what the report will lack, and offers no checksum of a scan that is not open', async () => {
  const { store } = onScreen(ReportCard)
  await expect.element(page.getByText('4 cues are not measured; it will say so.')).toBeVisible()
  await expect.element(page.getByText(/reads all of its 0.1 MB/u)).toBeVisible()
  store.setState({ media: 'missing' })
  await expect.element(page.getByText('there will be no pictures')).toBeVisible()
  await expect.element(page.getByRole('checkbox')).not.toBeInTheDocument()
})

it('has nothing that axe objects to', async () => {
  onScreen(ReportCard)
  await expect.element(save()).toBeVisible()
  const { violations } = await axe.run(document.body)
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
})
