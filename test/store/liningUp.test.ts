import { expect, test } from 'vitest'
import { createAppStore } from '../../src/store/appStore.ts'
import {
  addControl,
  beginSheet,
  canWriteDown,
  changeControl,
  openAdjustment,
  removeControl,
  removeReading,
  sayIsRead,
  sayIsSet,
  takeLastBack,
  takeSettings,
  writeDown,
} from '../../src/store/liningUp.ts'

const setUp = () => {
  const store = createAppStore()
  const now = () => store.getState().liningUp
  /** All controls and readings of the sheet, said at once. */
  const say = (settings: readonly number[], values: readonly number[]) => {
    for (const [at, value] of settings.entries()) sayIsSet(store, at, value)
    for (const [at, value] of values.entries()) sayIsRead(store, at, value)
  }
  return { store, now, say }
}

test('what is said is written down, and what is read next is still to be said', () => {
  const { store, now, say } = setUp()
  expect(canWriteDown(now())).toBe(false)
  writeDown(store)
  expect(now().adjustment.log).toEqual([])
  say([150, 50, 50], [600, 4, -6])
  expect(canWriteDown(now())).toBe(true)
  writeDown(store)
  expect(now().adjustment.log).toEqual([{ settings: [150, 50, 50], values: [600, 4, -6] }])
  expect(now().settings).toEqual([150, 50, 50])
  expect(now().values).toEqual([undefined, undefined, undefined])
  takeLastBack(store)
  expect(now().adjustment.log).toEqual([])
  expect(now().values).toEqual([600, 4, -6])
})

test('settings that were advised stand in for those that were', () => {
  const { store, now, say } = setUp()
  say([150, 50, 50], [600, 4, -6])
  takeSettings(store, [160, 50, 50])
  expect(now().settings).toEqual([160, 50, 50])
  expect(now().values).toEqual([undefined, undefined, undefined])
})

test('a control that is taken out takes its part of the log with it; one more begins the log anew', () => {
  const { store, now, say } = setUp()
  say([150, 50, 60], [600, 4, -6])
  writeDown(store)
  removeControl(store, 1)
  removeReading(store, 0)
  expect(now().adjustment.log).toEqual([{ settings: [150, 60], values: [4, -6] }])
  expect(now().adjustment.controls.map(({ name }) => name)).toEqual(['Beam current', 'Blue gain'])
  addControl(store)
  expect(now().adjustment.log).toEqual([])
  expect(now().settings).toEqual([150, 60, undefined])
})

test('the last control and the last reading stay', () => {
  const { store, now } = setUp()
  beginSheet(store, 'own')
  removeControl(store, 0)
  removeReading(store, 0)
  expect([now().adjustment.controls.length, now().adjustment.readings.length]).toEqual([1, 1])
})

test('a limit is changed without touching what was written down', () => {
  const { store, now, say } = setUp()
  say([150, 50, 50], [600, 4, -6])
  writeDown(store)
  changeControl(store, 0, { high: 200 })
  expect(now().adjustment.controls[0]).toMatchObject({ name: 'Beam current', high: 200 })
  expect(now().adjustment.log).toHaveLength(1)
})

test('an adjustment from a file goes on as its last entry has it', () => {
  const { store, now, say } = setUp()
  say([150, 50, 50], [600, 4, -6])
  writeDown(store)
  const { adjustment } = now()
  beginSheet(store, 'sensor')
  openAdjustment(store, adjustment)
  expect(now()).toMatchObject({ sheet: 'own', adjustment, settings: [150, 50, 50] })
})
