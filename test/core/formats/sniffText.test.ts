import { readdirSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { handOverFiles } from '../../../src/core/formats/handOverFiles.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { FORMATS_HANDED_OVER } from '../../../src/core/formats/prepareFormat.ts'
import { readList } from '../../../src/core/formats/readList.ts'
import { sniffText } from '../../../src/core/formats/sniffText.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

const INTERCHANGE = resolve(import.meta.dirname, '../../media/interchange')
const TIMING = { rate: rate(25), isDropFrame: false }

describe('what a text is', () => {
  it.each(['cdl', 'clf', 'edl', 'otio'] as const)('every real .%s file is told', (kind) => {
    const files = readdirSync(resolve(INTERCHANGE, kind)).filter((name) => !name.endsWith('.md'))
    expect(files.length).toBeGreaterThan(3)
    for (const name of files)
      expect(sniffText(readFileSync(resolve(INTERCHANGE, kind, name), 'utf8')), name).toBe(kind)
  })

  it('our own files are told, and the job', () => {
    expect(sniffText(writeJob(sampleJob()))).toBe('job')
    const kinds = FORMATS_HANDED_OVER.map((format) => {
      const made = handOverFiles(sampleJob(), REEL_ID, format)
      return made.ok ? sniffText(made.value.files[0]?.text ?? '') : undefined
    })
    expect(kinds).not.toContain(undefined)
    expect(kinds).not.toContain('job')
  })

  it('it goes by the content: comments, declarations, prefixes and byte order marks before it', () => {
    const cdl = '\ufeff<?xml version="1.0"?>\n<!-- <ProcessList> -->\n<c:ColorCorrection id="a"/>'
    expect(sniffText(cdl)).toBe('cdl')
    expect(sniffText('<!DOCTYPE x [<!ENTITY a "b">]><ProcessList/>')).toBe('clf')
    expect(sniffText('\n\n  {"OTIO_SCHEMA": "Timeline.1"}')).toBe('otio')
    expect(sniffText('title: a cut\n')).toBe('edl')
    expect(sniffText('1  AX  V  C  00:00:00:00 00:00:01:00 00:00:00:00 00:00:01:00')).toBe('edl')
    expect(sniffText('note,cue,timecode in\r\n')).toBe('csv')
  })

  it('a job that keeps a timeline is a job, and a broken one is still for its reader to refuse', () => {
    const held = JSON.stringify({ format: 'reelwright-job', text: '{"OTIO_SCHEMA": 1}' })
    expect(sniffText(held)).toBe('job')
    expect(sniffText(held.slice(0, -1))).toBe('job')
    expect(sniffText('{"OTIO_SCHEMA": "Timeline.1", "tracks": ')).toBe('otio')
  })

  it('what is nothing of these is nothing', () => {
    for (const text of ['', ' ', '<svg/>', '<', '{}', '[1]', '{', 'a,b,c', 'Dear all,', '\0\0ftyp'])
      expect(sniffText(text), text).toBeUndefined()
  })
})

describe('a list of any format', () => {
  it.each(['cdl', 'edl', 'otio', 'csv'] as const)('goes to the reader of %s', (format) => {
    const job = sampleJob()
    const made = handOverFiles(job, REEL_ID, format === 'cdl' ? 'ccc' : format)
    const text = made.ok ? (made.value.files[0]?.text ?? '') : ''
    const list = readList('orlop', text, TIMING)
    expect(list.ok && list.value.format).toBe(format)
    expect(list.ok && list.value.decisions.length).toBe(4)
  })

  it.each([
    ['a job', writeJob(sampleJob()), 'wrong-use', /open it instead/u],
    ['a process list', '<ProcessList/>', 'wrong-use', /process list/u],
    ['anything else', 'Dear all,\n', 'unknown-format', /\.otio/u],
  ])('%s is refused on line 1 with what to do', (_, text, code, says) => {
    const read = readList('letter.txt', text, TIMING)
    expect(read.ok).toBe(false)
    if (read.ok) return
    expect(read.problems[0]).toMatchObject({ code, at: { line: 1 } })
    expect(read.problems[0].says).toMatch(says)
    expect(read.problems[0].says).toContain('letter.txt')
  })
})
