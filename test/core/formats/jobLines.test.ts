import { describe, expect, it } from 'vitest'
import { migrateDown } from '../../../src/core/formats/job/migrations.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { sampleJob } from '../../support/sampleJob.ts'

const WRITTEN = writeJob(sampleJob())

/** The lines, without the space before them, that a refusal names. */
const linesOf = (text: string): readonly (string | undefined)[] => {
  const read = readJob(text)
  if (read.ok) throw new Error('It was read.')
  return read.problems.map(({ at }) => text.split('\n')[(at?.line ?? 0) - 1]?.trim())
}

describe('a refused job file', () => {
  it('names the line on which it stops being JSON', () => {
    expect(linesOf(WRITTEN.replace('"rate": {', '"rate": '))).toEqual(['"num": 25,'])
    expect(linesOf(WRITTEN.slice(0, WRITTEN.indexOf('"startCount"')))).toEqual([''])
  })

  it('names the line of each number that is past its limits', () => {
    const text = WRITTEN.replace(/"gamma": \[\s+1,\s+1,\s+1\s+\],\s+"gain"/u, (found) =>
      found.replace(/1,(\s+)1/u, '1,$1-7'),
    )
    expect(linesOf(text)).toEqual(['-7,'])
  })

  it('names the line of a record that lacks something, or has something unknown', () => {
    expect(linesOf(WRITTEN.replace(/\s+"ramp": 0,/u, ''))).toEqual(['{'])
    expect(linesOf(WRITTEN.replace('"frames": 1000', '"frames": 1000,\n"weather": 1'))).toEqual([
      '"weather": 1,',
    ])
  })

  it('names the lines of records that do not hang together', () => {
    const text = WRITTEN.replace('"first": 250', '"first": 400').replace(
      '"tolerance": "ebu-r103-v3"',
      '"tolerance": "other"',
    )
    expect(linesOf(text)).toEqual(['"tolerance": "other",', '"first": 400,'])
  })

  it('names lines of an older file as they stand in it', () => {
    const first = JSON.stringify(migrateDown(JSON.parse(WRITTEN), 1), undefined, 2)
    expect(linesOf(first.replace('"first": 400', '"first": -400'))).toEqual(['"first": -400,'])
  })

  it('names a line of what is no job at all', () => {
    expect(linesOf('\n[]')).toEqual(['[]'])
    expect(linesOf('\ufeff\n{"format": "reelwright-job",\n"version": 99}')).toEqual([
      '"version": 99}',
    ])
  })
})
