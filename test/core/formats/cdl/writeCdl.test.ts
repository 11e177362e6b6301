import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gradeToCdl } from '../../../../src/core/colour/cdl.ts'
import { readCdl } from '../../../../src/core/formats/cdl/readCdl.ts'
import { readCdlList } from '../../../../src/core/formats/cdl/readCdlList.ts'
import { writeCc, writeCcc, writeCdl } from '../../../../src/core/formats/cdl/writeCdl.ts'
import { handOverFiles } from '../../../../src/core/formats/handOverFiles.ts'
import { cuesOfReel } from '../../../../src/core/job/cueList.ts'
import type { Cue, Job } from '../../../../src/core/job/job.ts'
import type { ReelId } from '../../../../src/core/job/recordIds.ts'
import { says } from '../../../support/lossWords.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../../support/sampleJob.ts'

/** Without −0, which text does not tell from 0. */
const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => value + 0)

const WRITERS = { cc: writeCc, ccc: writeCcc, cdl: writeCdl } as const

const texts = (job: Job, format: keyof typeof WRITERS): readonly string[] => {
  const written = WRITERS[format](job, REEL_ID)
  if (!written.ok) throw new Error(written.problems[0].says)
  return written.value.files.map(({ text }) => text)
}

const corrections = (text: string) => {
  const read = readCdl(text)
  if (!read.ok) throw new Error(read.problems[0].says)
  expect(read.value.notTaken).toEqual([])
  return read.value.corrections
}

const withWords = (words: object) => (cue: Cue) => ({
  ...cue,
  foreign: [{ format: 'cdl', text: JSON.stringify(words) } as const],
})

describe.each(['cc', 'ccc', 'cdl'] as const)('ASC CDL written as .%s', (format) => {
  it('carries every correction exactly: what is written is read back to the last bit', () => {
    fc.assert(
      fc.property(
        number(-0.5, 0.5),
        number(0.1, 5),
        number(0.6, 3),
        number(0, 3),
        (lift, gamma, gain, saturation) => {
          const job = sampleJob([0, 100], (cue) => ({
            ...cue,
            grade: { lift: [lift, 0, 0.1], gamma: [gamma, 1, 1], gain: [1, gain, 1], saturation },
          }))
          const read = texts(job, format).flatMap(corrections)
          const expected = cuesOfReel(job, REEL_ID).map(({ grade }) => gradeToCdl(grade))
          expect(read.map(({ cdl }) => cdl)).toEqual(expected)
        },
      ),
      { seed: 1, numRuns: 100 },
    )
  })

  it('brings back grades of up to twelve digits to the last bit, and the notes', () => {
    const digits = (min: number, max: number) =>
      number(min, max).map((value) => Number(value.toPrecision(12)))
    fc.assert(
      fc.property(
        digits(-0.5, 0.5),
        digits(0.1, 5),
        digits(0.6, 3),
        fc.string(),
        (l, g, w, note) => {
          const job = sampleJob([0, 100], (cue) => ({
            ...cue,
            note,
            grade: { lift: [l, 0, 0.1], gamma: [1, g, 1], gain: [1, w, 1], saturation: g },
          }))
          const read = texts(job, format).flatMap((text) => {
            const list = readCdlList(text, undefined)
            return list.ok ? list.value.decisions : []
          })
          const cues = cuesOfReel(job, REEL_ID)
          expect(read.map(({ values }) => values.grade)).toEqual(cues.map(({ grade }) => grade))
          expect(read.map(({ values }) => values.note ?? '')).toEqual(cues.map((cue) => cue.note))
        },
      ),
      { seed: 2, numRuns: 200 },
    )
  })

  it('is of namespace v1.2, with valid, stable, unique ids and the cue-in timecode', () => {
    const job = sampleJob()
    const all = texts(job, format)
    for (const text of all) expect(text).toMatch(/^<\?xml .*\n<\w+ xmlns="urn:ASC:CDL:v1\.2"/u)
    const read = all.flatMap(corrections)
    expect(read[1]?.id).toBe('Orlop-reel-1-cue-0002')
    expect(new Set(read.map(({ id }) => id)).size).toBe(4)
    expect(read[1]?.words.correction[0]?.text).toBe('Cue 2, in at 10:00:04:00')
    expect(texts(job, format)).toEqual(all)
  })

  it('keeps an id that came from outside where it is valid and just once there', () => {
    const ids = ['a.b-1', 'a.b-1', '1st', 'Orlop-reel-1-cue-0002', 'é_x', 'has space', '']
    const job = sampleJob([0, 10, 20, 30, 40, 50, 60], (cue, i) => withWords({ id: ids[i] })(cue))
    const read = texts(job, format).flatMap(corrections)
    expect(read.map(({ id }) => id)).toEqual([
      'a.b-1',
      'Orlop-reel-1-cue-0002-2',
      'Orlop-reel-1-cue-0003',
      'Orlop-reel-1-cue-0002',
      'é_x',
      'Orlop-reel-1-cue-0006',
      'Orlop-reel-1-cue-0007',
    ])
    const made = handOverFiles(job, REEL_ID, format)
    expect(made.ok && says(made.value.losses)).toContain('The id that cues 2, 3 and 6 came with')
  })

  it('says what it cannot carry, and nothing of what is not there', () => {
    const job = sampleJob(undefined, (cue, i) => ({
      ...cue,
      ramp: i === 2 ? 12 : 0,
      note: i === 1 ? 'a\u0007' : 'é\n😀',
      framing: i === 1 || i === 3 ? { ...cue.framing, zoom: 1.2 } : cue.framing,
    }))
    const made = handOverFiles(job, REEL_ID, format)
    const losses = made.ok ? says(made.value.losses) : ''
    expect(losses).toContain('The framing of cues 2 and 4.')
    expect(losses).toContain('The ramp of cue 3')
    expect(losses).toContain('Control characters in the note of cue 2.')
    expect(losses).not.toMatch(/agreement|came with|descriptions of cue|named for/u)
    const plain = handOverFiles(sampleJob(), REEL_ID, format)
    expect(plain.ok && says(plain.value.losses)).not.toMatch(/framing|ramp|Control/u)
  })

  it('is refused of a reel that is not in the job', () => {
    expect(WRITERS[format](sampleJob(), 'other' as ReelId).ok).toBe(false)
  })
})

describe('ASC CDL files', () => {
  it('are one a cue as .cc, named for it', () => {
    const written = writeCc(sampleJob(), REEL_ID)
    expect(written.ok && written.value.files.map(({ name }) => name)).toEqual([
      'Orlop-reel-1-cue-0001.cc',
      'Orlop-reel-1-cue-0002.cc',
      'Orlop-reel-1-cue-0003.cc',
      'Orlop-reel-1-cue-0004.cc',
    ])
  })

  it('name the scan of each decision as .cdl, or the picture that its list named', () => {
    const reel = sampleReel()
    const named = sampleReel({ media: { ...reel.media, name: 'a\tb & "c".mov' } })
    const job = sampleJob(
      [0, 10],
      (cue, i) => (i === 0 ? cue : withWords({ mediaRefs: ['x/y.dpx'] })(cue)),
      named,
    )
    const read = corrections(texts(job, 'cdl')[0] ?? '')
    expect(read.map(({ words }) => words.mediaRefs)).toEqual([['a\tb & "c".mov'], ['x/y.dpx']])
  })

  it('as .ccc and .cc have what was said of a decision in the correction, and say so', () => {
    const job = sampleJob([0, 10], (cue, i) =>
      i === 0
        ? cue
        : withWords({
            mediaRefs: ['x'],
            decision: [{ name: 'ViewingDescription', text: 'd' }],
            correction: [{ name: 'Description', text: 'c' }],
          })(cue),
    )
    for (const format of ['ccc', 'cc'] as const) {
      const [, second] = texts(job, format).flatMap(corrections)
      expect(second?.words.correction.map(({ text }) => text).slice(1)).toEqual(['', 'd', 'c'])
      const made = handOverFiles(job, REEL_ID, format)
      const losses = made.ok ? says(made.value.losses) : ''
      expect(losses).toContain('That descriptions of cue 2 were of the decision')
      expect(losses).toContain('Which picture a list named for cue 2.')
    }
    const made = handOverFiles(job, REEL_ID, 'cdl')
    expect(made.ok && says(made.value.losses)).not.toMatch(/decision and not|named for/u)
  })
})
