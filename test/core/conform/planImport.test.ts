import { describe, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import type { ImportOptions, ImportPlan } from '../../../src/core/conform/importPlan.ts'
import { planImport } from '../../../src/core/conform/planImport.ts'
import type { Decision, DecisionList } from '../../../src/core/formats/decisionList.ts'
import { CUE_FOREIGN_LIMIT, JOB_FOREIGN_LIMIT } from '../../../src/core/job/limits.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { decision, list, ownList } from '../../support/decisionLists.ts'
import { cueId, REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

const START = 900_000
const GRADE = { ...IDENTITY_GRADE, saturation: 0.5 }

/** A decision on these frames of the reel. */
const on = (from: number, to: number, change: Partial<Decision> = {}): Decision =>
  decision({
    recordSpan: { from: START + from, to: START + to },
    values: { grade: GRADE },
    ...change,
  })

const PLACES: ImportOptions = {
  matchBy: 'timecode',
  times: 'record',
  startsAt: null,
  takesPlaces: true,
  takesGrades: true,
}
const GRADES: ImportOptions = { ...PLACES, takesPlaces: false }

const job = sampleJob()

const plan = (
  decisions: readonly Decision[] | DecisionList,
  options: ImportOptions = PLACES,
  of = job,
): ImportPlan =>
  planImport(of, REEL_ID, 'format' in decisions ? decisions : list(decisions), options)

/** Outcome, cue and frame of each row, briefly. */
const rows = (of: ImportPlan) =>
  of.rows.map(({ outcome, cue, first }) => [outcome, cue?.id, first] as const)

describe('an import by timecode with places', () => {
  it('matches a cue on its frame, moves one within five frames, and begins one elsewhere', () => {
    const made = plan([on(0, 97), on(97, 180), on(180, 250), on(250, 400), on(400, 1000)])
    expect(rows(made)).toEqual([
      ['matches', 'cue-1', 0],
      ['moves', 'cue-2', 97],
      ['begins', undefined, 180],
      ['matches', 'cue-3', 250],
      ['matches', 'cue-4', 400],
    ])
    expect(made.untouched).toEqual([])
    expect(made.notTaken).toEqual([])
  })

  it('gives a cue to the nearer of two decisions, and the other a cue of its own', () => {
    expect(rows(plan([on(97, 101), on(101, 200)]))).toEqual([
      ['begins', undefined, 97],
      ['moves', 'cue-2', 101],
    ])
  })

  it('keeps the first cue on the first frame and says so', () => {
    const made = plan([on(3, 100)])
    expect(rows(made)).toEqual([['matches', 'cue-1', 0]])
    expect(made.rows[0]?.says).toContain('stays on its first frame')
  })

  it('takes a decision that began before the reel for the first cue', () => {
    expect(rows(plan([on(-40, 60)]))).toEqual([['matches', 'cue-1', 0]])
  })

  it('makes conflicts of what lies outside, lasts no frame, or comes twice to a frame', () => {
    const made = plan([on(1000, 1100), on(-50, -10), on(500, 500), on(600, 700), on(600, 650)])
    expect(rows(made)).toEqual([
      ['conflicts', undefined, undefined],
      ['conflicts', undefined, undefined],
      ['conflicts', undefined, 500],
      ['begins', undefined, 600],
      ['conflicts', undefined, 600],
    ])
    expect(made.rows.map(({ says }) => says !== '')).toEqual([true, true, true, false, true])
    expect(made.untouched).toEqual([1, 2, 3, 4])
  })

  it('makes a conflict of a grade or a ramp that a job does not hold', () => {
    const bad = { ...IDENTITY_GRADE, gamma: [0, 1, 1] as const }
    const made = plan([
      on(0, 100, { values: { grade: bad } }),
      on(100, 200, { values: { ramp: -1 } }),
    ])
    expect(rows(made).map(([outcome]) => outcome)).toEqual(['conflicts', 'conflicts'])
    expect(made.rows[0]?.says).toContain('Gamma must be above 0')
  })

  it('begins a dissolve where its times begin, and takes no ramp from it', () => {
    const dissolve = { kind: 'dissolve', frames: 24 } as const
    expect(rows(plan([on(500, 600, { transition: dissolve })]))).toEqual([
      ['begins', undefined, 500],
    ])
  })

  it('tells of gaps once, with their frames', () => {
    const { notTaken } = plan([on(0, 100), on(110, 200), on(205, 300)])
    expect(notTaken.map(({ says }) => says)).toEqual([
      'The list leaves 2 gaps, 15 frames in all; no cue begins there, the cue before goes on.',
    ])
  })

  it('tells of no gap between labels on both sides of midnight', () => {
    const late = sampleJob([0], undefined, sampleReel({ startCount: 2_160_000 - 50 }))
    const spans = [
      { from: 2_160_000 - 50, to: 2_160_000 },
      { from: 0, to: 950 },
    ]
    const made = plan(
      spans.map((recordSpan) => decision({ recordSpan })),
      PLACES,
      late,
    )
    expect(rows(made).map(([, , first]) => first)).toEqual([0, 50])
    expect(made.notTaken).toEqual([])
  })

  it('tells of decisions that begin before an earlier one ends, with their frames', () => {
    const { notTaken } = plan([on(0, 200), on(50, 80), on(70, 90), on(200, 1000)])
    expect(notTaken.map(({ says }) => says.split(';')[0])).toEqual([
      '2 decisions begin before an earlier one ends, 40 frames in all',
    ])
  })

  it('tells of frames after its end, up to the next cue or the end of the reel', () => {
    const told = (to: number, of = job) =>
      plan([on(0, 100), on(100, to)], PLACES, of).notTaken.map(({ says }) => says)
    expect(told(240)).toEqual([
      'The list ends 10 frames before cue 3 begins; its last cue goes on up to it.',
    ])
    expect(told(999, sampleJob([0]))).toEqual([
      'The list ends 1 frame before the reel does; its last cue goes on to the end.',
    ])
    expect(told(1000, sampleJob([0]))).toEqual([])
  })

  it('tells that a list of another scan names it and not this reel', () => {
    const told = (...sources: readonly string[]) =>
      plan(
        sources.map((source, index) => on(500 * index, 500 * (index + 1), { source })),
        PLACES,
        sampleJob([0]),
      ).notTaken.map(({ says }) => says)
    expect(told('SCAN_B', 'SCAN_C')).toEqual(['The list names “SCAN_B” and 1 more, not this reel.'])
    expect(told('BL', 'SCAN_B')).toEqual(['The list names “SCAN_B”, not this reel.'])
    expect(told('SCAN_B', '')).toEqual([])
    expect(told('AX', 'AX')).toEqual([])
    expect(told('SCAN_B', 'orlop-1.mov')).toEqual([])
  })

  it('lets the first label of the reel be the same where only one of both drops frames', () => {
    const ntsc = rate(30_000, 1001)
    // 10:00:00;00 is frame 1,078,920 of drop-frame counting; 10:00:00:00 is 1,080,000 of the other.
    const reel = sampleReel({ rate: ntsc, isDropFrame: true, startCount: 1_078_920 })
    const span = { from: 1_080_100, to: 1_081_000 }
    const nonDrop = list([decision({ recordSpan: span })], { rate: ntsc, isDropFrame: false })
    const made = plan(nonDrop, PLACES, sampleJob([0, 100], undefined, reel))
    expect(rows(made)).toEqual([['matches', 'cue-2', 100]])
    expect(made.notTaken.map(({ says }) => says)).toEqual([
      'The list’s timecode is non-drop, the reel’s drop-frame; the reel’s first label is the same in both, and from there a frame is a frame.',
    ])
  })

  it('lets the first decision begin on a chosen frame, and the others as far after it', () => {
    const hour = (from: number, to: number) =>
      decision({ recordSpan: { from: 90_000 + from, to: 90_000 + to } })
    const made = plan([hour(0, 150), hour(150, 300)], { ...PLACES, startsAt: frame(100) })
    expect(rows(made)).toEqual([
      ['matches', 'cue-2', 100],
      ['matches', 'cue-3', 250],
    ])
  })

  it('counts on past midnight', () => {
    const late = sampleJob([0, 100], undefined, sampleReel({ startCount: 2_160_000 - 50 }))
    const made = plan([decision({ recordSpan: { from: 50, to: 80 } })], PLACES, late)
    expect(rows(made)).toEqual([['matches', 'cue-2', 100]])
  })

  it('keeps frames as frames where the list has another rate, and tells it once', () => {
    const from = 864_000 + 100
    const made = plan(list([decision({ recordSpan: { from, to: from + 9 } })], { rate: rate(24) }))
    expect(rows(made)).toEqual([['matches', 'cue-2', 100]])
    expect(made.notTaken[0]?.says).toBe(
      'The list counts 24 frames a second, the reel 25; a frame of the list is taken as a frame of the reel.',
    )
  })

  it('passes over what states no times', () => {
    expect(rows(plan([decision({ values: { grade: GRADE } })]))).toEqual([
      ['passed-over', undefined, undefined],
    ])
  })
})

describe('an import of grades alone', () => {
  it('gives a decision to the cue it begins, or the one most of it lies in, and says which', () => {
    const made = plan([on(100, 250), on(240, 330), on(390, 410)], GRADES)
    expect(rows(made)).toEqual([
      ['matches', 'cue-2', 100],
      ['matches', 'cue-3', 240],
      ['conflicts', undefined, 390],
    ])
    expect(made.rows[1]?.says).toBe('It begins 10 frames before cue 3.')
    expect(made.rows[2]?.says).toBe('Decision 2 goes to cue 3 already.')
  })

  it('prefers the decision that begins the cue to one that lies in it', () => {
    expect(rows(plan([on(110, 140), on(100, 110)], GRADES)).map(([outcome]) => outcome)).toEqual([
      'conflicts',
      'matches',
    ])
  })

  it('passes over a decision without a grade', () => {
    expect(rows(plan([on(0, 100, { values: { ramp: 3 } })], GRADES))).toEqual([
      ['passed-over', undefined, 0],
    ])
  })
})

describe('an import by name', () => {
  const NAME: ImportOptions = { ...PLACES, matchBy: 'name', times: 'source' }
  const named = (name: string, change: Partial<Decision> = {}) =>
    decision({ name, values: { grade: GRADE }, ...change })

  it('knows the names of our own lists, whatever their case, accents and punctuation', () => {
    const made = plan(
      [named('Orlop-reel-1-cue-0002'), named('ORLÓP REEL 1 CUE 0003'), named('cue-4')],
      { ...NAME, takesPlaces: false },
    )
    expect(rows(made).map(([, cue]) => cue)).toEqual(['cue-2', 'cue-3', 'cue-4'])
  })

  it('knows a name that another list gave a cue, before our own names', () => {
    const text = JSON.stringify({ id: 'Orlop-reel-1-cue-0002' })
    const kept = sampleJob(undefined, (cue, index) =>
      index === 3 ? { ...cue, foreign: [{ format: 'cdl', text }] } : cue,
    )
    expect(rows(plan([named('Orlop-reel-1-cue-0002')], NAME, kept))[0]?.[1]).toBe('cue-4')
  })

  it('goes through the cues of one scene mark in turn', () => {
    const scenes = sampleJob(undefined, (cue, index) => ({ ...cue, scene: index > 1 ? '12a' : '' }))
    const made = plan([named('12A'), named('12A'), named('12A')], NAME, scenes)
    expect(rows(made).map(([outcome, cue]) => [outcome, cue])).toEqual([
      ['matches', 'cue-3'],
      ['matches', 'cue-4'],
      ['conflicts', undefined],
    ])
    expect(made.rows[0]?.says).toBe('2 cues have its name; this is number 1 of them.')
  })

  it('takes only decisions of this reel, by their source time', () => {
    const from = (source: string, at: number) =>
      named('', { source, sourceSpan: { from: START + at, to: START + at + 20 } })
    const made = plan(
      [from('ORLOP_RE', 250), from('OTHER', 100), from('scans/orlop-1.mov', 500), from('BL', 0)],
      NAME,
    )
    expect(rows(made)).toEqual([
      ['matches', 'cue-3', 250],
      ['passed-over', undefined, undefined],
      ['begins', undefined, 500],
      ['passed-over', undefined, undefined],
    ])
    expect(made.rows[1]?.says).toBe('Its source is “OTHER”, not this reel.')
  })

  it('trusts a place where a cue begins more than a number that may have shifted', () => {
    const span = { from: START + 250, to: START + 400 }
    const made = plan([named('cue 2', { source: 'Orlop reel 1', sourceSpan: span })], NAME)
    expect(rows(made)).toEqual([['matches', 'cue-3', 250]])
  })

  it('moves a cue to where its decision went, but never past another', () => {
    const at = (name: string, first: number) =>
      named(name, {
        source: 'Orlop reel 1',
        sourceSpan: { from: START + first, to: START + first + 10 },
      })
    const made = plan([at('cue 2', 180), at('cue 3', 700), at('cue 1', 900)], NAME)
    expect(rows(made)).toEqual([
      ['moves', 'cue-2', 180],
      ['conflicts', undefined, 700],
      ['begins', undefined, 900],
    ])
    expect(made.rows[1]?.says).toBe('Cue 3 cannot move there past cue 4.')
  })

  it('goes by its place and not by a number of ours, but by a name that was given', () => {
    const at = (name: string, first: number) =>
      named(name, {
        source: 'Orlop reel 1',
        sourceSpan: { from: START + first, to: START + first + 10 },
      })
    const scenes = sampleJob(undefined, (cue, index) => ({
      ...cue,
      id: cueId(index + 70),
      scene: index === 2 ? 'night' : '',
    }))
    const decisions = [at('Orlop reel 1 CUE 0002', 180), at('night', 270)]
    expect(rows(plan(decisions, NAME, scenes))).toEqual([
      ['begins', undefined, 180],
      ['moves', 'cue-72', 270],
    ])
    const { source: _, sourceSpan, ...first } = at('CUE 2', 180)
    const unsourced = [decision({ ...first, recordSpan: sourceSpan })]
    expect(rows(plan(unsourced, { ...NAME, times: 'record' }, scenes))).toEqual([
      ['begins', undefined, 180],
    ])
  })

  it('passes over a name that no cue has', () => {
    expect(plan([named('nobody')], NAME).rows[0]?.says).toBe('No cue has the name “nobody”.')
  })
})

describe('an import in order', () => {
  const ORDER: ImportOptions = { ...PLACES, matchBy: 'order' }

  it('gives the nth decision to the nth cue, and none to those past the last', () => {
    const made = plan(
      Array.from({ length: 5 }, () => decision({ values: { grade: GRADE } })),
      ORDER,
    )
    expect(rows(made).map(([outcome, cue]) => [outcome, cue])).toEqual([
      ['matches', 'cue-1'],
      ['matches', 'cue-2'],
      ['matches', 'cue-3'],
      ['matches', 'cue-4'],
      ['passed-over', undefined],
    ])
  })

  it('moves all cues by their times in one go', () => {
    const made = plan([on(0, 300), on(300, 450), on(450, 600), on(600, 700), on(700, 800)], ORDER)
    expect(rows(made)).toEqual([
      ['matches', 'cue-1', 0],
      ['moves', 'cue-2', 300],
      ['moves', 'cue-3', 450],
      ['moves', 'cue-4', 600],
      ['begins', undefined, 700],
    ])
  })
})

it('finds nothing to do in a list of the job itself, whichever way it is matched', () => {
  for (const matchBy of ['timecode', 'name', 'order'] as const)
    for (const times of ['record', 'source'] as const) {
      const made = plan(ownList(job, REEL_ID), { ...PLACES, matchBy, times })
      expect(made.rows.map(({ outcome }) => outcome)).toEqual(Array(4).fill('matches'))
      expect(made.untouched).toEqual([])
    }
})

describe('what a row would change', () => {
  it('is only what differs, by the values it takes', () => {
    const graded = { grade: GRADE, note: '', scene: '7', ramp: 4, gradeName: 'B' } as const
    const made = plan([on(100, 250, { values: graded }), on(252, 400, { values: {} })])
    expect(made.rows.map(({ changes }) => changes)).toEqual([
      ['grade', 'ramp', 'scene', 'name'],
      ['place', 'shot change'],
    ])
    const grades = plan([on(100, 250, { values: graded })], GRADES)
    expect(grades.rows[0]?.changes).toEqual(['grade', 'scene', 'name'])
  })

  it('is the place and the values of a cue that begins, and nothing where nothing is done', () => {
    const made = plan([
      on(500, 600, { values: { note: 'x' }, foreign: [{ format: 'edl', text: '{}' }] }),
      on(700, 700),
    ])
    expect(made.rows.map(({ changes }) => changes)).toEqual([['place', 'note', 'kept words'], []])
  })

  it('is nothing for a list of the job itself', () => {
    for (const { changes } of plan(ownList(job, REEL_ID)).rows) expect(changes).toEqual([])
  })
})

describe('what other lists said', () => {
  const text = 'x'.repeat(CUE_FOREIGN_LIMIT)
  const most = Math.floor(JOB_FOREIGN_LIMIT / CUE_FOREIGN_LIMIT)
  const reel = sampleReel({ frames: 100_000 })
  const said = Array.from({ length: most + 2 }, (_, index) =>
    on(10 * index, 10 * index + 10, { values: {}, foreign: [{ format: 'otio', text }] }),
  )

  it('is kept up to a limit for the job, and what is left out is told once with its count', () => {
    const made = plan(said, PLACES, sampleJob([0], undefined, reel))
    const kept = made.rows.filter(({ decision: { foreign } }) => foreign.length > 0)
    expect(kept.map(({ number }) => number)).toEqual(
      Array.from({ length: most }, (_, index) => index + 1),
    )
    expect(
      made.notTaken.filter(({ code }) => code === 'too-large').map(({ says }) => says),
    ).toEqual([
      'A job keeps at most 32000000 characters of other lists; what 2 decisions say besides their values is left out.',
    ])
  })

  it('is kept where it replaces as much', () => {
    const full = sampleJob(
      Array.from({ length: most }, (_, index) => 10 * index),
      (cue) => ({ ...cue, foreign: [{ format: 'otio', text }] }),
      reel,
    )
    const again = plan(said.slice(0, most), PLACES, full)
    expect(again.rows.every(({ changes }) => changes.length === 0)).toBe(true)
    expect(again.notTaken.filter(({ code }) => code === 'too-large')).toEqual([])
    const more = plan(said.slice(most), PLACES, full)
    expect(more.rows.map(({ decision: { foreign } }) => foreign.length)).toEqual([0, 0])
  })
})

it('tells of a reel that is not there', () => {
  const made = planImport(job, 'reel-z' as typeof REEL_ID, list([on(0, 1)]), PLACES)
  expect(made.rows).toEqual([])
  expect(made.notTaken[0]?.code).toBe('not-found')
})
