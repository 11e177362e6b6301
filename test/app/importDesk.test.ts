import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { createImportDesk, isListFile } from '../../src/app/importDesk.ts'
import { problemOfFile } from '../../src/app/readListFile.ts'
import { handOverFiles } from '../../src/core/formats/handOverFiles.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob } from '../../src/store/document.ts'
import { importPlanOf, outcomeCounts } from '../../src/store/importing.ts'
import { jobOf } from '../../src/store/queries.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

const real = (path: string): File =>
  new File(
    [readFileSync(resolve(import.meta.dirname, '../media/interchange', path))],
    path.split('/').at(-1) ?? path,
  )

const ownEdl = (): string => {
  const made = handOverFiles(sampleJob(), REEL_ID, 'edl')
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value.files[0]?.text ?? ''
}

const setUp = (...picked: readonly File[]) => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  const desk = createImportDesk(store, async () => picked)
  return { store, desk, says: () => store.getState().notice?.says }
}

it('a list is read by what is in it, whatever its name, and laid over the job', async () => {
  const { store, desk } = setUp()
  await desk.openList(new File([ownEdl()], 'orlop.ccc'))
  expect(store.getState().importing?.list.format).toBe('edl')
  const plan = importPlanOf(store.getState())
  expect(plan && outcomeCounts(plan).matches).toBe(4)
})

it('the same by way of a picker, where cancelling does nothing', async () => {
  const { store, desk } = setUp(real('cdl/cdl_test1.ccc'))
  await desk.pickList()
  expect(store.getState().importing?.name).toBe('cdl_test1.ccc')
  const cancelled = setUp()
  await cancelled.desk.pickList()
  expect(cancelled.store.getState().importing).toBeUndefined()
  expect(cancelled.says()).toBeUndefined()
})

it('a process list is offered a place of its own', async () => {
  const { store, desk } = setUp()
  await desk.openList(real('clf/range.clf'))
  expect(store.getState().importing).toBeUndefined()
  expect(store.getState().processOffer?.list.steps.map(({ kind }) => kind)).toEqual(['range'])
})

it.each([
  ['a file with bad numbers names its line', 'clf/illegal-cdl_bad_slope.clf', /line \d+/u],
  ['a list that breaks off names its line', 'edl/no_such', /^cut\.edl, line 2: /u],
])('%s, and changes nothing', async (_, path, says) => {
  const { store, desk, ...told } = setUp()
  const broken = new File(['TITLE: A\n001  AX  V  C  nonsense\n'], 'cut.edl')
  await desk.openList(path === 'edl/no_such' ? broken : real(path))
  expect(told.says()).toMatch(says)
  expect(store.getState().notice?.isProblem).toBe(true)
  expect(store.getState().importing).toBeUndefined()
  expect(store.getState().processOffer).toBeUndefined()
  expect(jobOf(store.getState())).toEqual(sampleJob())
})

it('a job, a letter and a list without a reel are each refused in a sentence', async () => {
  const { desk, says } = setUp()
  await desk.openList(new File([writeJob(sampleJob())], 'orlop.json'))
  expect(says()).toMatch(/orlop\.json.*is a job/u)
  await desk.openList(new File(['Dear all,'], 'letter.txt'))
  expect(says()).toMatch(/letter\.txt.*no list/u)
  const empty = createAppStore()
  await createImportDesk(empty).openList(new File([ownEdl()], 'cut.edl'))
  expect(empty.getState().notice?.says).toMatch(/open the reel/u)
})

it('text that is not UTF-8 is read as older programs write it, and told', async () => {
  const { store, desk } = setUp()
  const bytes = Uint8Array.from(ownEdl(), (letter) => letter.charCodeAt(0))
  const title = [...'TITLE: H\u00e4fen'].map((letter) => letter.charCodeAt(0))
  const rest = bytes.subarray(bytes.indexOf(13))
  await desk.openList(new File([Uint8Array.from(title), rest], 'cut.edl'))
  expect(store.getState().importing?.list.title).toBe('Häfen')
  const told = importPlanOf(store.getState())?.notTaken.map(({ says }) => says) ?? []
  expect(told.join()).toContain('Windows-1252')
})

it('a list is told from scans and jobs, by its content where the name leaves it open', async () => {
  const file = (text: string, name: string) => new File([text], name)
  expect(await isListFile(file('', 'a.EDL'))).toBe(true)
  expect(await isListFile(file('TITLE: A', 'a.txt'))).toBe(true)
  expect(await isListFile(file('{"OTIO_SCHEMA": "Timeline.1"}', 'a.json'))).toBe(true)
  expect(await isListFile(file(writeJob(sampleJob()), 'a.json'))).toBe(false)
  expect(await isListFile(file('TITLE: A', 'a.mov'))).toBe(false)
  expect(await isListFile(file('Dear all', 'a.txt'))).toBe(false)
})

const ownCc = (): readonly File[] => {
  const made = handOverFiles(sampleJob(), REEL_ID, 'cc')
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value.files.map(({ name, text }) => new File([text], name))
}

it('a file a cue comes back as one list, in the order of names', async () => {
  const { store, desk } = setUp(...ownCc().toReversed())
  await desk.pickList()
  expect(store.getState().importing?.name).toBe('4 files')
  const plan = importPlanOf(store.getState())
  expect(plan && outcomeCounts(plan).matches).toBe(4)
  expect(plan?.rows.map(({ cue }) => cue?.first)).toEqual([0, 100, 250, 400])
})

it('several files that are no list together are refused with the one that is not', async () => {
  const { store, desk, says } = setUp()
  await desk.openLists([...ownCc(), new File([ownEdl()], 'cut.edl')])
  expect(says()).toContain('different formats')
  await desk.openLists([...ownCc(), new File(['<ColorCorrection'], 'broken.cc')])
  expect(says()).toMatch(/^broken\.cc, line 1/u)
  expect(store.getState().importing).toBeUndefined()
})

it.each([
  ['Line 19, column “gain R”: no number.', 'a.csv, line 19, column “gain R”: no number.'],
  ['Line 190 is long.', 'a.csv, line 19: Line 190 is long.'],
  ['It breaks off.', 'a.csv, line 19: It breaks off.'],
  ['a.csv is empty.', 'a.csv is empty.'],
])('a line is named once: %s', (says, told) => {
  expect(problemOfFile('a.csv', { code: 'malformed', says, at: { line: 19 } }).says).toBe(told)
})
