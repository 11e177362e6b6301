import { createElement, useState } from 'react'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { NumberField } from '../../../src/ui/parts/NumberField.tsx'
import { clearScreen, onScreen } from './onScreen.ts'

const changed = vi.fn<(value: number, gesture: string | undefined) => void>()

const Gain = () => {
  const [value, setValue] = useState(1)
  return createElement(NumberField, {
    label: 'gain',
    value,
    owner: 'cue-1',
    reset: 1,
    step: 0.5,
    decimals: 1,
    low: -1,
    high: 4,
    unit: ' %',
    onChange: (to, gesture) => {
      changed(to, gesture)
      setValue(to)
    },
  })
}

const field = () => page.getByRole('spinbutton', { name: 'gain' })
const hint = () => page.getByRole('status')

beforeEach(() => {
  changed.mockClear()
  onScreen(Gain)
})
afterEach(clearScreen)

it('stops at its limit when typed past it, says so, and stops saying so', async () => {
  await field().fill('99')
  await userEvent.keyboard('{Enter}')
  await expect.element(field()).toHaveValue('4.0 %')
  await expect.element(hint()).toHaveTextContent('most is 4 %')
  await expect.element(field()).toHaveAccessibleDescription('most is 4 %')
  // Enter gives the keys back to commands.
  expect(document.activeElement).toBe(document.body)
  await field().click()
  await userEvent.keyboard('{ArrowDown}')
  await expect.element(field()).toHaveValue('3.5 %')
  await expect.element(hint()).not.toBeInTheDocument()
})

it('says so too when it is left by Tab', async () => {
  await field().fill('-20')
  await userEvent.tab()
  await expect.element(field()).toHaveValue('−1.0 %')
  await expect.element(hint()).toHaveTextContent('least is −1 %')
})

it('stays as it was where no number was typed, and says that', async () => {
  await field().fill('much')
  await userEvent.keyboard('{Enter}')
  await expect.element(hint()).toHaveTextContent('not a number')
  await expect.element(field()).toHaveAttribute('aria-invalid', 'true')
  expect(changed).not.toHaveBeenCalled()
  await userEvent.keyboard('{Escape}')
  await expect.element(field()).toHaveValue('1.0 %')
  await expect.element(hint()).not.toBeInTheDocument()
})

it('moves by what is shown when nudged finely, as one run', async () => {
  await field().click()
  await userEvent.keyboard('{Alt>}{ArrowUp}{/Alt}')
  await expect.element(field()).toHaveValue('1.05 %')
  await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}')
  await expect.element(field()).toHaveValue('−1.00 %')
  await userEvent.tab()
  await expect.element(field()).toHaveValue('−1.0 %')
})

it('stops at its limit when dragged past it, and comes back at once', async () => {
  await expect.element(field()).toBeVisible()
  const input = field().element()
  const move = (type: string, clientX: number) =>
    input.dispatchEvent(
      new PointerEvent(type, { clientX, button: 0, pointerId: 1, bubbles: true, cancelable: true }),
    )
  input.setPointerCapture = () => undefined
  input.releasePointerCapture = () => undefined
  move('pointerdown', 100)
  move('pointermove', 400)
  await expect.element(field()).toHaveValue('4.0 %')
  await expect.element(hint()).toHaveTextContent('most is 4 %')
  move('pointermove', 396)
  await expect.element(field()).toHaveValue('3.0 %')
  move('pointerup', 396)
  const gestures = () => new Set(changed.mock.calls.map(([, gesture]) => gesture)).size
  expect(gestures()).toBe(1)
  move('pointerdown', 100)
  move('pointermove', 90)
  move('pointerup', 90)
  expect(gestures()).toBe(2)
})
