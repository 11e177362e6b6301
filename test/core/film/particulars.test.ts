import { expect, it } from 'vitest'
import { checkParticulars } from '../../../src/core/film/checkParticulars.ts'
import { filmCautions } from '../../../src/core/film/filmCautions.ts'
import {
  type GuideTrack,
  guideFrame,
  guideSeconds,
  guideSpeed,
} from '../../../src/core/film/guideTrack.ts'
import {
  NO_PARTICULARS,
  type Particulars,
  withMark,
  withoutMark,
} from '../../../src/core/film/particulars.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { setParticulars } from '../../../src/core/job/commands/setParticulars.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

const found = (change: Partial<Particulars>): Particulars => ({ ...NO_PARTICULARS, ...change })

it.each([
  [{ shrinkage: 0.21 }, 'shrinkage'],
  [{ shrinkage: -0.01 }, 'shrinkage'],
  [{ splices: 1.5 }, 'splices'],
  [{ soundAhead: -1001 }, 'soundAhead'],
  [{ speed: rate(1, 2) }, 'speed'],
  [{ aspect: 0.4 }, 'aspect'],
  [{ leader: 'x'.repeat(4001) }, 'leader'],
  [{ marks: [{ frame: 1000, kind: 'note', says: '' }] }, 'marks.0.frame'],
] as const)('%j cannot be, by check, command and file', (change, field) => {
  const wrong = found(change)
  expect(checkParticulars(wrong, 1000).map(({ at }) => at?.field)).toEqual([`particulars.${field}`])
  expect(setParticulars(sampleJob(), REEL_ID, () => wrong, 'Film').ok).toBe(false)
  const job = sampleJob([0], undefined, sampleReel({ particulars: wrong }))
  const read = readJob(writeJob(job))
  expect(!read.ok && read.problems.map(({ at }) => at?.field)).toEqual([
    expect.stringContaining(`particulars.${field.split('.')[0]}`),
  ])
})

it('holds what was found, and is one labelled change', () => {
  const particulars = found({
    ...{ element: 'print', support: 'acetate', shrinkage: 0.009, splices: 12 },
    ...{ sound: 'optical', soundAhead: 26, speed: rate(24), aspect: 1.37 },
  })
  const change = setParticulars(sampleJob(), REEL_ID, () => particulars, 'Film')
  expect(change.ok && change.value.label).toBe('Film')
  const job = sampleJob([0], undefined, sampleReel({ particulars }))
  const read = readJob(writeJob(job))
  expect(read.ok && read.value.reels[REEL_ID]?.particulars).toEqual(particulars)
})

it('keeps marks by frame', () => {
  const mark = (frame: number) => ({ frame, kind: 'splice', says: '' }) as const
  const marked = withMark(withMark(found({}), mark(40)), mark(7))
  expect(marked.marks.map(({ frame }) => frame)).toEqual([7, 40])
  expect(withoutMark(marked, 0).marks.map(({ frame }) => frame)).toEqual([40])
})

it('warns of what is there, and of what is not known', () => {
  const warns = (change: Partial<Particulars>) => filmCautions(found(change)).join(' ')
  expect(warns({})).toContain('not known what the film is made of')
  expect(warns({ support: 'polyester' })).toBe('')
  expect(warns({ support: 'nitrate' })).toContain('cannot be put out')
  expect(warns({ support: 'acetate', shrinkage: 0.0125 })).toContain('not to be projected')
  expect(warns({ support: 'acetate', vinegar: 'slight', mould: 'marked' })).toMatch(
    /Vinegar.*Mould/u,
  )
  expect(warns({ support: 'acetate', perforations: 'slight' })).toBe('')
  expect(warns({ support: 'acetate', perforations: 'severe' })).toContain('Perforations')
})

it('puts sound beside its picture, both ways, at the speed it was made for', () => {
  // 24 at 25: the sound that was made for 24 runs 25/24 faster, up 70.672 cents (facts/film.md §4).
  const guide: GuideTrack = {
    name: 'a.wav',
    madeFor: rate(24),
    mark: { frame: 48, seconds: 10 },
  }
  expect(guideSeconds(guide, 48)).toBe(10)
  expect(guideSeconds(guide, 0)).toBe(8)
  expect(guideFrame(guide, 11)).toBe(72)
  expect(1200 * Math.log2(guideSpeed(guide, rate(25)))).toBeCloseTo(70.672, 3)
})
