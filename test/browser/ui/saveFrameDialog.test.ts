import { afterEach, expect, it, vi } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { SaveFrameDialog } from '../../../src/ui/bench/SaveFrameDialog.tsx'
import { commandById } from '../../../src/ui/commands/registry.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const dialog = () => page.getByRole('dialog', { name: 'Save this frame' })

it('the command asks what and as what, saves that, and closes once it is done', async () => {
  const app = onScreen(SaveFrameDialog)
  let finish: () => void = () => undefined
  vi.mocked(app.services.saveStill).mockReturnValue(
    new Promise<void>((done) => {
      finish = done
    }),
  )
  await expect.element(dialog()).not.toBeInTheDocument()
  commandById('save-frame').run(app)
  await page.getByLabelText('What').selectOptions('As scanned, before base and grade')
  await page.getByLabelText('As', { exact: true }).selectOptions('DPX, 10 bit')
  await page.getByRole('button', { name: 'Save' }).click()
  expect(app.services.saveStill).toHaveBeenCalledExactlyOnceWith({
    stage: 'scanned',
    format: 'dpx',
  })
  await expect.element(page.getByRole('button', { name: 'Saving…' })).toBeDisabled()
  finish()
  await expect.element(dialog()).not.toBeInTheDocument()
})

it('Enter saves what is offered first; Escape and Cancel save nothing', async () => {
  const app = onScreen(SaveFrameDialog)
  vi.mocked(app.services.saveStill).mockResolvedValue(undefined)
  const open = async () => {
    commandById('save-frame').run(app)
    await expect.element(page.getByRole('button', { name: 'Save' })).toHaveFocus()
  }
  await open()
  await userEvent.keyboard('{Escape}')
  await expect.element(dialog()).not.toBeInTheDocument()
  await open()
  await page.getByRole('button', { name: 'Cancel' }).click()
  await expect.element(dialog()).not.toBeInTheDocument()
  expect(app.services.saveStill).not.toHaveBeenCalled()
  await open()
  await userEvent.keyboard('{Enter}')
  expect(app.services.saveStill).toHaveBeenCalledExactlyOnceWith({
    stage: 'graded',
    format: 'png',
  })
})
