import { describe, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { planImport } from '../../../src/core/conform/planImport.ts'
import { suggestImport } from '../../../src/core/conform/suggestImport.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { decision, list, ownList } from '../../support/decisionLists.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

const job = sampleJob()
const START = 900_000
const values = { grade: { ...IDENTITY_GRADE, saturation: 0.5 } }

const suggest = (...decisions: Parameters<typeof decision>[0][]) =>
  suggestImport(job, REEL_ID, list(decisions.map(decision)))

describe('what an import is suggested as', () => {
  it('brings all of our own list back to a job with one cue', () => {
    const bare = sampleJob([0])
    const own = ownList(job, REEL_ID)
    const { rows } = planImport(bare, REEL_ID, own, suggestImport(bare, REEL_ID, own))
    expect(rows.map(({ outcome, first }) => [outcome, first])).toEqual([
      ['matches', 0],
      ['begins', 100],
      ['begins', 250],
      ['begins', 400],
    ])
  })

  it('goes by source time where sources name the reel', () => {
    const span = { from: START + 10, to: START + 20 }
    const made = suggest(
      { source: 'ORLOP_RE', sourceSpan: span, recordSpan: { from: 0, to: 10 }, values },
      { source: 'OTHER', sourceSpan: span, recordSpan: { from: 10, to: 20 }, values },
    )
    expect(made).toEqual({
      matchBy: 'name',
      times: 'source',
      startsAt: null,
      takesPlaces: true,
      takesGrades: true,
    })
  })

  it('goes by record time where it lies on the reel, and takes no grades of a list of places', () => {
    expect(suggest({ recordSpan: { from: START + 10, to: START + 20 } })).toEqual({
      matchBy: 'timecode',
      times: 'record',
      startsAt: null,
      takesPlaces: true,
      takesGrades: false,
    })
  })

  it('begins a list that counts from another hour on the first frame', () => {
    const made = suggest({ recordSpan: { from: 90_000, to: 90_100 }, values })
    expect([made.matchBy, made.times, made.startsAt]).toEqual(['timecode', 'record', 0])
  })

  it('goes by source time alone where most of it lies on the reel', () => {
    const made = suggest({ source: 'TAPE', sourceSpan: { from: START + 1, to: START + 2 }, values })
    expect([made.matchBy, made.times, made.startsAt]).toEqual(['timecode', 'source', null])
  })

  it('takes the label of the first frame where a list has another rate', () => {
    const from = 864_000 + 5
    const other = list([decision({ recordSpan: { from, to: from + 9 } })], { rate: rate(24) })
    expect(suggestImport(job, REEL_ID, other).startsAt).toBe(null)
  })

  it('goes by the places of ASC CDL of ours, and takes them only on a reel without cues', () => {
    const at = (first: number) => ({
      recordSpan: { from: START + first, to: START + first + 50 },
      values,
    })
    const cdl = list([at(0), at(100)].map(decision), { format: 'cdl' })
    const taken = (firsts: readonly number[], of = cdl) => {
      const { matchBy, takesPlaces, takesGrades } = suggestImport(sampleJob(firsts), REEL_ID, of)
      return [matchBy, takesPlaces, takesGrades]
    }
    expect(taken([0, 100])).toEqual(['timecode', false, true])
    expect(taken([0])).toEqual(['timecode', true, true])
    const single = list([decision(at(100))], { format: 'cdl' })
    expect(taken([0], single)).toEqual(['timecode', false, true])
    const elsewhere = list([at(-5000), at(-4000)].map(decision), { format: 'cdl' })
    expect(taken([0], elsewhere)).toEqual(['order', false, true])
  })

  it('goes by name where a list without times names a cue, else in order', () => {
    const byName = suggest({ name: 'nobody', values }, { name: 'orlop_reel_1_cue_0003', values })
    expect([byName.matchBy, byName.takesPlaces, byName.takesGrades]).toEqual(['name', false, true])
    expect(suggest({ name: 'cc0001', values }).matchBy).toBe('order')
  })
})
