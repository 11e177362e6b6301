import { createElement } from 'react'
import { afterEach, expect, it, vi } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { setPreferences } from '../../../src/store/setPreferences.ts'
import { useCommandKeys } from '../../../src/ui/commands/useCommandKeys.ts'
import { CommandList } from '../../../src/ui/header/CommandList.tsx'
import { CommandButton } from '../../../src/ui/parts/CommandButton.tsx'
import { SettingsDialog } from '../../../src/ui/settings/SettingsDialog.tsx'
import { Position } from '../../../src/ui/transport/Position.tsx'
import { clearScreen, onScreen } from './onScreen.ts'

const Keys = () => {
  useCommandKeys()
  return createElement('input', { 'aria-label': 'a text' })
}

const Scanned = () => createElement(CommandButton, { id: 'scanned', label: 'Scanned' })

afterEach(clearScreen)

const isPeeking = (app: ReturnType<typeof onScreen>) => app.store.getState().view.isPeeking

const key = (type: string, name: string, code: string, repeat = false) =>
  window.dispatchEvent(
    new KeyboardEvent(type, { key: name, code, repeat, bubbles: true, cancelable: true }),
  )

it('a command that holds is held by its key, not run again by its repeat', async () => {
  const app = onScreen(Keys)
  await expect.element(page.getByRole('textbox')).toBeVisible()
  const seen = vi.fn()
  app.store.subscribe(({ view }, before) => view === before.view || seen())
  key('keydown', 'v', 'KeyV')
  key('keydown', 'v', 'KeyV', true)
  key('keydown', 'v', 'KeyV', true)
  expect(isPeeking(app)).toBe(true)
  expect(seen).toHaveBeenCalledOnce()
  key('keyup', 'V', 'KeyV')
  expect(isPeeking(app)).toBe(false)
})

it('is let go of when the window is left', async () => {
  const app = onScreen(Keys)
  await expect.element(page.getByRole('textbox')).toBeVisible()
  key('keydown', 'v', 'KeyV')
  expect(isPeeking(app)).toBe(true)
  window.dispatchEvent(new Event('blur'))
  expect(isPeeking(app)).toBe(false)
})

it('is held by its button as long as that is pressed', async () => {
  const app = onScreen(Keys, Scanned)
  const button = page.getByRole('button', { name: 'Show the scanned picture' })
  await expect.element(button).toBeVisible()
  button.element().focus()
  await userEvent.keyboard('{Enter>}')
  expect(isPeeking(app)).toBe(true)
  await userEvent.keyboard('{/Enter}')
  expect(isPeeking(app)).toBe(false)
})

it('keys do nothing where text is typed, but chords that do not edit still run', async () => {
  const app = onScreen(Keys)
  await page.getByRole('textbox').fill('')
  await userEvent.keyboard('v/')
  expect(isPeeking(app)).toBe(false)
  expect(app.store.getState().opened).toBeUndefined()
  await expect.element(page.getByRole('textbox')).toHaveValue('v/')
  await userEvent.keyboard('{Control>}s{/Control}')
  expect(app.services.saveJobFile).toHaveBeenCalledOnce()
})

it('the command finder opens by key, finds by words, runs, and gives the focus back', async () => {
  const app = onScreen(Keys, Scanned, CommandList)
  const button = page.getByRole('button', { name: 'Show the scanned picture' })
  await expect.element(button).toBeVisible()
  button.element().focus()
  await userEvent.keyboard('/')
  await expect.element(page.getByRole('searchbox')).toHaveFocus()
  await userEvent.keyboard('last reel')
  await expect.element(page.getByRole('menuitem')).toHaveTextContent(/Last frame of the reel.*End/u)
  await userEvent.keyboard('{ArrowDown}{Enter}')
  await expect.element(page.getByRole('dialog')).not.toBeInTheDocument()
  await vi.waitFor(() => expect(app.store.getState().playhead).toBe(999))
  await expect.element(button).toHaveFocus()
})

it('a place is typed after its key, refused in place, and gone to', async () => {
  const app = onScreen(Keys, Position)
  await expect.element(page.getByRole('timer')).toHaveTextContent('10:00:00:00')
  key('keydown', 'g', 'KeyG')
  const field = page.getByRole('textbox', { name: /^Go to a timecode/u })
  await expect.element(field).toHaveFocus()
  await field.fill('11:00:00:00')
  await userEvent.keyboard('{Enter}')
  await expect.element(page.getByRole('status')).toHaveTextContent('The reel goes from')
  expect(app.services.seek).not.toHaveBeenCalled()
  await field.fill('10+20')
  await userEvent.keyboard('{Enter}')
  expect(app.services.seek).toHaveBeenCalledWith(420)
  await expect.element(field).not.toBeInTheDocument()
  await page.getByRole('button', { name: 'Go to a place' }).click()
  await userEvent.keyboard('{Escape}')
  await expect.element(field).not.toBeInTheDocument()
  expect(app.services.seek).toHaveBeenCalledOnce()
})

const row = (name: string) => page.getByRole('listitem').filter({ hasText: name })

it('a key is given, asked about where another command has it, and runs what it was given to', async () => {
  const app = onScreen(Keys, SettingsDialog)
  await expect.element(page.getByRole('textbox')).toBeVisible()
  app.store.setState({ opened: 'settings' })
  await page.getByRole('searchbox').fill('cue')
  const give = page.getByRole('button', { name: 'Give a key to: Tick on each cue' })
  await give.click()
  await userEvent.keyboard('{Enter}')
  await expect.element(page.getByRole('alert')).toHaveTextContent('press another')
  await userEvent.keyboard('s')
  await expect
    .element(page.getByRole('alert'))
    .toHaveTextContent('S is “Split the cue at the line”')
  expect(app.store.getState().preferences.keys).toEqual({})
  await userEvent.keyboard('{Escape}')
  await expect.element(give).toHaveFocus()
  expect(app.store.getState().preferences.keys).toEqual({})
  await userEvent.keyboard('{Enter}s')
  await page.getByRole('button', { name: 'Take it from there' }).click()
  await expect.element(page.getByRole('status')).toHaveTextContent('S is now: Tick on each cue.')
  await expect.element(row('Split the cue at the line')).not.toHaveTextContent('S×')
  await userEvent.keyboard('{Escape}')
  await expect.element(page.getByRole('dialog')).not.toBeInTheDocument()
  key('keydown', 's', 'KeyS')
  expect(app.store.getState().playback.isTicking).toBe(true)
})

it('keys are taken away, reset one by one and all at once, and mirrored for the other hand', async () => {
  const app = onScreen(SettingsDialog)
  app.store.setState({ opened: 'settings' })
  const keys = () => app.store.getState().preferences.keys
  await page.getByRole('button', { name: 'Take S away from: Split the cue at the line' }).click()
  expect(keys()).toEqual({ split: [] })
  await page.getByRole('button', { name: 'Reset the keys of: Split the cue at the line' }).click()
  expect(keys()).toEqual({})
  setPreferences(app.store, { keys: { split: ['F2'], tick: ['F3'] } })
  await page.getByRole('button', { name: 'Reset all keys' }).click()
  expect(keys()).toEqual({})
  await page.getByRole('radio', { name: /^right hand on the keys/u }).click()
  await expect.element(row('Split the cue at the line')).toHaveTextContent('L×')
})

it('where somebody agrees, keys play and answer, and change nothing else', async () => {
  const app = onScreen(Keys)
  await expect.element(page.getByRole('textbox')).toBeVisible()
  app.store.setState({ step: 'agree', playhead: 30 as never })
  const before = app.store.getState().history?.job
  for (const name of 'abcdefghijklmnopqrstuvwxyz') key('keydown', name, `Key${name.toUpperCase()}`)
  expect(app.store.getState().history?.job).toBe(before)
  key('keydown', ' ', 'Space')
  expect(app.services.play).toHaveBeenCalled()
  app.store.setState({ step: 'rehearse' })
  for (const name of 'abcdefghijklmnopqrstuvwxyz') key('keydown', name, `Key${name.toUpperCase()}`)
  expect(app.store.getState().history?.job).not.toBe(before)
})
