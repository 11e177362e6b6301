import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { takeBaseList } from '../../src/app/baseListDesk.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob, undo } from '../../src/store/document.ts'
import { reelOf } from '../../src/store/queries.ts'
import { sampleJob } from '../support/sampleJob.ts'

const CLF = join(import.meta.dirname, '../media/interchange/clf')

const opened = () => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'key')
  const list = () => reelOf(store.getState())?.base.list
  const says = () => store.getState().notice?.says ?? ''
  return { store, list, says }
}

const fileOf = (name: string): File => new File([readFileSync(join(CLF, name))], name)

test('a process list becomes the list of the base, as one step that undo takes back', async () => {
  const { store, list, says } = opened()
  await takeBaseList(store, fileOf('lut1d_example.clf'))
  expect(list()?.name).toBe('transform example lut1d')
  expect(list()?.steps.map(({ kind }) => kind)).toEqual(['curve'])
  expect(says()).toContain('lut1d_example.clf is the base list now')
  undo(store)
  expect(list()).toBeNull()
})

test('a second list takes the place of the first, and undo brings that back', async () => {
  const { store, list } = opened()
  await takeBaseList(store, fileOf('lut1d_example.clf'))
  const first = list()
  await takeBaseList(store, fileOf('range.clf'))
  expect(list()?.steps.map(({ kind }) => kind)).toEqual(['range'])
  undo(store)
  expect(list()).toBe(first)
})

test('a file that is refused is told by its name and line, and nothing is changed', async () => {
  const { store, list, says } = opened()
  const { history } = store.getState()
  await takeBaseList(store, fileOf('illegal-cdl_bad_slope.clf'))
  expect(says()).toMatch(/^illegal-cdl_bad_slope\.clf, line \d+: /u)
  expect(list()).toBeNull()
  expect(store.getState().history).toBe(history)
})

test('what is no process list is refused', async () => {
  const { store, list, says } = opened()
  await takeBaseList(store, new File(['no list at all'], 'notes.txt'))
  expect(says()).toMatch(/^notes\.txt/u)
  expect(list()).toBeNull()
})
