import { readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
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

const fileOf = (name: string): File => new File([readFileSync(join(CLF, name))], basename(name))

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
  expect(says()).toBe('notes.txt is not a process list (.clf): it is not XML.')
  expect(list()).toBeNull()
})

test.each([
  ['edl/cdl.edl', 'cdl.edl is an edit decision list, not a process list (.clf).'],
  ['cdl/cdl_test1.ccc', 'cdl_test1.ccc is an ASC CDL file, not a process list (.clf).'],
  [
    'otio/simple_cut.otio',
    'simple_cut.otio is an OpenTimelineIO timeline, not a process list (.clf).',
  ],
])('another list is named for what it is: %s', async (path, expected) => {
  const { store, list, says } = opened()
  await takeBaseList(store, fileOf(`../${path}`))
  expect(says()).toBe(expected)
  expect(list()).toBeNull()
})

test('all that a list taken loses is told, a line each, and stays in sight', async () => {
  const { store, list } = opened()
  const text = readFileSync(join(CLF, 'range.clf'), 'utf8').replace(
    /<ProcessList[^>]*>/u,
    (root) => `${root}<a:Ink xmlns:a="urn:a"/>\n<b:Ink xmlns:b="urn:b"/>`,
  )
  await takeBaseList(store, new File([text], 'range.clf'))
  const lines = store.getState().notice?.says.split('\n') ?? []
  expect(list()).not.toBeNull()
  expect(lines[0]).toContain('range.clf is the base list now')
  expect(lines.length).toBeGreaterThan(2)
  for (const line of lines.slice(1)) expect(line).toMatch(/^range\.clf, line \d+/u)
  expect(store.getState().notice?.isProblem).toBe(true)
})
