import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { at } from '../../../../src/core/base/assert.ts'
import { readCdlList } from '../../../../src/core/formats/cdl/readCdlList.ts'
import { writeCcc, writeCdl } from '../../../../src/core/formats/cdl/writeCdl.ts'
import type { DecisionList } from '../../../../src/core/formats/decisionList.ts'
import { withForeign } from '../../../../src/core/job/foreignOf.ts'
import type { Job } from '../../../../src/core/job/job.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../../support/sampleJob.ts'

const MEDIA = resolve(import.meta.dirname, '../../../media/interchange/cdl')

const listOf = (text: string): DecisionList => {
  const read = readCdlList(text, undefined)
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

/** A job whose cues take the decisions of a list one after another. */
const taken = ({ decisions, foreign }: DecisionList): Job => {
  const reel = sampleReel()
  return sampleJob(
    decisions.map((_, i) => i * 10),
    (cue, i) => {
      const decision = at(decisions, i)
      return { ...cue, ...decision.values, foreign: withForeign(cue.foreign, decision.foreign) }
    },
    { ...reel, foreign: withForeign(reel.foreign, foreign) },
  )
}

const WRITERS = { ccc: writeCcc, cdl: writeCdl } as const

const written = (job: Job, format: keyof typeof WRITERS): string => {
  const made = WRITERS[format](job, REEL_ID)
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value.files[0]?.text ?? ''
}

const count = (text: string, word: string): number => text.split(word).length - 1

describe.each(['ccc', 'cdl'] as const)('import and export as .%s', (format) => {
  it.each(['cdl_test1.cc', 'cdl_test2.cc', 'cdl_test1.ccc', 'cdl_test1.cdl'])(
    'of %s come to rest: ids and descriptions stay as they were and are not doubled',
    (name) => {
      const text = readFileSync(`${MEDIA}/${name}`, 'utf8')
      const list = listOf(text)
      const once = written(taken(list), format)
      const twice = written(taken(listOf(once)), format)
      const thrice = written(taken(listOf(twice)), format)
      expect(twice).toBe(once)
      expect(thrice).toBe(once)
      const words = text.match(/(?<=Description>)[^<]+(?=<\/\w*Description)/gu) ?? []
      expect(words.length).toBeGreaterThan(0)
      for (const said of words) expect(count(once, `>${said}<`)).toBe(count(text, `>${said}<`))
      for (const id of text.match(/(?<=id=")[^"]+/gu) ?? [])
        expect(count(once, `id="${id}"`)).toBe(1)
      expect(listOf(once).decisions.map(({ values }) => values.grade)).toEqual(
        list.decisions.map(({ values }) => values.grade),
      )
    },
  )
})

describe('import and export of ASC CDL', () => {
  const word = fc.record({
    name: fc.constantFrom('Description', 'InputDescription', 'ViewingDescription'),
    text: fc.oneof(fc.string(), fc.constantFrom('', ' a ', 'Cue 1, in at 10:00:00:00', '<&>\r\n')),
  })
  const words = fc.array(word, { maxLength: 3 })
  const number = (min: number, max: number) =>
    fc.double({ min, max, noNaN: true }).map((value) => value + 0)
  const triple = (min: number, max: number) =>
    fc.tuple(number(min, max), number(min, max), number(min, max))
  const cue = fc.record({
    note: fc.oneof(fc.constant(''), fc.string()),
    lift: triple(-0.5, 0.5),
    gamma: triple(0.1, 5),
    gain: triple(0.6, 3),
    saturation: number(0, 3),
    id: fc.oneof(fc.constant(''), fc.constantFrom('a', 'b', '1', 'Orlop-reel-1-cue-0001')),
    mediaRefs: fc.array(fc.string(), { maxLength: 2 }),
    decision: words,
    correction: words,
    sop: words,
    sat: words,
  })

  it('is a fixed point of any job: what is read from a file writes the same file', () => {
    fc.assert(
      fc.property(
        fc.array(cue, { minLength: 1, maxLength: 4 }),
        words,
        fc.constantFrom('ccc', 'cdl' as const),
        (cues, list, format) => {
          const job = sampleJob(
            cues.map((_, i) => i * 10),
            (each, i) => {
              const { note, lift, gamma, gain, saturation, ...kept } = at(cues, i)
              const text = JSON.stringify(kept)
              return {
                ...each,
                note,
                grade: { lift, gamma, gain, saturation },
                foreign: [{ format: 'cdl', text }],
              }
            },
            {
              ...sampleReel(),
              foreign: [{ format: 'cdl', text: JSON.stringify({ words: list }) }],
            },
          )
          const once = written(job, format)
          expect(written(taken(listOf(once)), format)).toBe(once)
        },
      ),
      { seed: 5, numRuns: 500 },
    )
  })
})
