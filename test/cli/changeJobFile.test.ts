import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, expect, test } from 'vitest'
import { readJobFile } from '../../src/cli/readJobFile.ts'
import { changeJobFile, stillAsRead } from '../../src/cli/writeJobFile.ts'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { addPack } from '../../src/core/job/commands/addPack.ts'
import type { PackId } from '../../src/core/job/recordIds.ts'
import { sampleJob } from '../support/sampleJob.ts'

const PACK = {
  id: 'pack-000000000001' as PackId,
  ...{ madeAt: '2026-11-27T09:00:00Z', madeFor: 'Ines', cues: 4, key: null },
}
const JOB = sampleJob()
const RENAMED = { ...JOB, info: { job: { ...JOB.info.job, title: 'Named meanwhile' } } }

const made: string[] = []
let here = ''
let path = ''
beforeEach(() => {
  here = mkdtempSync(join(tmpdir(), 'reelwright-change-'))
  made.push(here)
  path = join(here, 'job.json')
  writeFileSync(path, writeJob(JOB))
})
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true })
})

test('a change goes on top of what was saved meanwhile', async () => {
  writeFileSync(path, writeJob(RENAMED))
  const kept = await changeJobFile(path, (now) => addPack(now, PACK), [])
  expect(kept.ok).toBe(true)
  const read = readJob(readFileSync(path, 'utf8'))
  if (!read.ok) throw new Error('the job cannot be read')
  expect(read.value.info.job.title).toBe('Named meanwhile')
  expect(Object.keys(read.value.packs)).toEqual([PACK.id])
})

test('a job and what goes with it are written both or neither', async () => {
  const before = readFileSync(path, 'utf8')
  const nowhere = { path: join(here, 'no-folder', 'pack.html'), content: 'pack' }
  const refused = await changeJobFile(path, (now) => addPack(now, PACK), [], [nowhere])
  expect(refused.ok).toBe(false)
  expect(readFileSync(path, 'utf8')).toBe(before)
  expect(readdirSync(here)).toEqual(['job.json'])
})

test('a job that was saved meanwhile is told from the one that was read', async () => {
  const job = await readJobFile(path)
  if (!job.ok) throw new Error('the job cannot be read')
  expect((await stillAsRead(path, job.value)).ok).toBe(true)
  writeFileSync(path, writeJob(RENAMED))
  const told = await stillAsRead(path, job.value)
  expect(!told.ok && told.problems[0].says).toContain('saved by somebody else meanwhile')
})
