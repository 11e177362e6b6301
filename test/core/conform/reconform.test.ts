import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { applyReconform, type NewReelFacts } from '../../../src/core/conform/applyReconform.ts'
import { followStretches } from '../../../src/core/conform/followStretches.ts'
import { planRecut } from '../../../src/core/conform/planRecut.ts'
import type { FoundStretch, ReconformPlan } from '../../../src/core/conform/reconformPlan.ts'
import { reconformReport } from '../../../src/core/conform/reconformReport.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { applyChange, invertChange } from '../../../src/core/job/change.ts'
import { holdFrame } from '../../../src/core/job/commands/holdFrame.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import type { Job } from '../../../src/core/job/job.ts'
import type { HeldId } from '../../../src/core/job/recordIds.ts'
import type { CuePlacement } from '../../../src/core/shots/cuesFromBoundaries.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { decision, list } from '../../support/decisionLists.ts'
import { cueId, REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

const REEL = sampleReel()

/** Cues on 0, 100, 250 and 400 of 1000 frames, each of its own saturation. */
const job = sampleJob(undefined, (cue, index) => ({
  ...cue,
  ramp: index,
  grade: { ...IDENTITY_GRADE, saturation: index / 8 },
}))

const found = (from: number, to: number, old: number, change: Partial<FoundStretch> = {}) => ({
  from,
  to,
  shift: from - old,
  sure: 0.9,
  slack: 0,
  doubt: '',
  ...change,
})

const cut = (first: number): CuePlacement => ({
  first: frame(first),
  ramp: 0,
  kind: 'cut',
  confidence: 0.8,
})

const plan = (
  stretches: readonly FoundStretch[],
  frames: number,
  placements: readonly CuePlacement[] = [],
  of: Job = job,
): ReconformPlan => followStretches(of, REEL, stretches, frames, placements, [])

const rows = ({ rows }: ReconformPlan) => rows.map(({ outcome, first }) => [outcome, first])

const begun = ({ added }: ReconformPlan) =>
  added.map(({ first, again, boundary }) => [first, again?.id, boundary.kind])

const facts = (frames: number): NewReelFacts => ({
  frames,
  rate: REEL.rate,
  media: { ...REEL.media, name: 'orlop-1-again.mov', bytes: 99 },
})

const counter = (): (() => ReturnType<typeof cueId>) => {
  let made = 1000
  return () => cueId(made++)
}

const changeOf = (of: Job, made: ReconformPlan) => {
  const applied = applyReconform(of, REEL_ID, made, facts(made.frames), counter())
  if (!applied.ok) throw new Error(applied.problems[0].says)
  return applied.value.change
}

describe('the plan by which cues follow what was found', () => {
  it('moves all cues by a shift of all', () => {
    const made = plan([found(40, 1040, 0)], 1040)
    expect(rows(made)).toEqual([
      ['follows', 40],
      ['follows', 140],
      ['follows', 290],
      ['follows', 440],
    ])
    expect(begun(made)).toEqual([[0, undefined, 'start']])
  })

  it('follows shots out of order, and tells of heads that are not there', () => {
    const made = plan([found(0, 150, 250), found(150, 240, 110), found(240, 340, 0)], 340)
    expect(rows(made)).toEqual([
      ['follows', 240],
      ['follows', 150],
      ['follows', 0],
      ['lost', undefined],
    ])
    expect(made.rows[1]?.says).toBe('Its first 10 frames are not there.')
    expect(made.rows[1]).toMatchObject({ frames: 150, found: 90 })
    expect(begun(made)).toEqual([])
  })

  it('begins a cue where a picture comes again, and none where a cue goes on after a gap', () => {
    const made = plan(
      [found(0, 100, 0), found(100, 130, 20), found(130, 180, 100), found(180, 200, 170)],
      200,
    )
    expect(rows(made).slice(0, 2)).toEqual([
      ['follows', 0],
      ['follows', 130],
    ])
    expect(begun(made)).toEqual([])
    const again = plan([found(0, 100, 0), found(100, 250, 100), found(250, 300, 0)], 300)
    expect(begun(again)).toEqual([[250, 'cue-1', 'cut']])
    expect(again.rows[0]?.says).toBe('Its picture comes 1 more time.')
  })

  it('begins cues for new pictures, one for each shot of them', () => {
    const made = plan([found(0, 100, 0), found(180, 300, 100)], 300, [cut(100), cut(140), cut(180)])
    expect(begun(made)).toEqual([
      [100, undefined, 'cut'],
      [140, undefined, 'cut'],
    ])
    expect(rows(made)[1]).toEqual(['follows', 180])
  })

  it('leaves a few frames that are found nowhere to the cue before, unless they are a shot', () => {
    const stretches = [found(0, 100, 0), found(106, 256, 100)]
    expect(begun(plan(stretches, 256))).toEqual([])
    expect(begun(plan(stretches, 256, [cut(100), cut(106)]))).toEqual([[100, undefined, 'cut']])
  })

  it('is doubtful where what was found is, or is little', () => {
    const doubt = 'It shows next to nothing, as other frames do.'
    const made = plan(
      [found(0, 100, 0, { doubt }), found(100, 108, 150), found(108, 200, 250, { sure: 0.3 })],
      200,
    )
    expect(rows(made).map(([outcome]) => outcome)).toEqual([
      'doubtful',
      'doubtful',
      'doubtful',
      'lost',
    ])
  })

  it('says how far a cue may be off, but not where a shot begins with it', () => {
    const made = plan([found(0, 400, 0, { slack: 3 })], 400, [cut(250)])
    expect(made.rows.map(({ says }) => says)).toEqual([
      '',
      'Its picture moves too little to tell its frame: it may be 3 frames off.',
      '',
      'Its picture is not found.',
    ])
  })
})

describe('following pictures', () => {
  it('is one change: reel, cues and held frames, with ramps and grades kept', () => {
    const holding = [30, 500].reduce((of, n) => {
      const held = holdFrame(of, REEL_ID, frame(n), `held-${n}` as HeldId)
      return held.ok ? applyChange(of, held.value.change) : of
    }, job)
    const made = plan(
      [found(0, 150, 250), found(150, 250, 0), found(250, 300, 250)],
      300,
      [],
      holding,
    )
    const after = applyChange(holding, changeOf(holding, made))
    expect(
      cuesOfReel(after, REEL_ID).map(({ first, ramp, grade, boundary }) => [
        first,
        ramp,
        grade.saturation,
        boundary.kind,
      ]),
    ).toEqual([
      [0, 2, 0.25, 'start'],
      [150, 0, 0, 'cut'],
      [250, 0, 0.25, 'cut'],
    ])
    expect(after.reels[REEL_ID]).toMatchObject({
      frames: 300,
      name: REEL.name,
      startCount: 900_000,
    })
    expect(after.reels[REEL_ID]?.media.name).toBe('orlop-1-again.mov')
    expect(Object.values(after.held).map(({ frame: n }) => n)).toEqual([180])
  })

  it('refuses another state of the job, and a reel of another length', () => {
    const made = plan([found(0, 1000, 0)], 1000)
    const codeOf = (of: Job, frames: number) => {
      const applied = applyReconform(of, REEL_ID, made, facts(frames), counter())
      return applied.ok ? undefined : applied.problems[0].code
    }
    expect(codeOf(sampleJob(), 1000)).toBe('conflict')
    expect(codeOf(job, 999)).toBe('conflict')
    expect(codeOf(job, 1000)).toBe(undefined)
  })

  it('gives a job that can be saved and opened, and undoes exactly, whatever was found', () => {
    const anyStretches = fc
      .array(
        fc.record({
          gap: fc.integer({ min: 0, max: 60 }),
          length: fc.integer({ min: 1, max: 300 }),
          old: fc.integer({ min: 0, max: 999 }),
          sure: fc.double({ min: 0, max: 1, noNaN: true }),
        }),
        { maxLength: 12 },
      )
      .map((parts) => {
        let end = 0
        return parts.map(({ gap, length, old, sure }) => {
          const from = end + gap
          end = from + Math.min(length, 1000 - old)
          return found(from, end, old, { sure })
        })
      })
    const anyCuts = fc.uniqueArray(fc.integer({ min: 1, max: 2000 }), { maxLength: 10 })
    fc.assert(
      fc.property(
        anyStretches,
        anyCuts,
        fc.integer({ min: 1, max: 40 }),
        (stretches, cuts, rest) => {
          const frames = (stretches.at(-1)?.to ?? 0) + rest
          const shots = cuts.filter((n) => n < frames).toSorted((a, b) => a - b)
          const made = plan(stretches, frames, shots.map(cut))
          const change = changeOf(job, made)
          const after = applyChange(job, change)
          const read = readJob(writeJob(after))
          expect(read.ok ? read.value : read.problems).toEqual(after)
          expect(applyChange(after, invertChange(change))).toEqual(job)
          const report = reconformReport(made)
          for (const { number } of made.rows) expect(report).toContain(`Cue ${number}`)
        },
      ),
      { seed: 4, numRuns: 400 },
    )
  })
})

describe('the report', () => {
  it('says what follows and by how much, and every number of what is lost', () => {
    const full = sampleJob(undefined, (cue, index) =>
      index === 3
        ? {
            ...cue,
            grade: { ...IDENTITY_GRADE, lift: [0.01, 0.02, 0.03] as const, saturation: 0.9 },
            gradeName: 'B',
            alternates: [{ name: 'A', grade: IDENTITY_GRADE }],
            framing: { ...cue.framing, zoom: 1.25 },
            ramp: 6,
            scene: '12',
            note: 'cold\nnight',
          }
        : cue,
    )
    const report = reconformReport(plan([found(20, 420, 0)], 420, [], full))
    expect(report).toContain(
      '  Cue 2: 10:00:04:00 (frame 100) to 10:00:04:20 (frame 120), 20 frames later; 150 of 150 frames found, 90 % sure.',
    )
    const lost = report.slice(report.indexOf('Lost'))
    for (const line of [
      'Cue 4, 10:00:16:00 (frame 400), 600 frames.',
      'Grade B: lift 0.01 0.02 0.03, gamma 1 1 1, gain 1 1 1, saturation 0.9',
      'Alternate A: lift 0 0 0, gamma 1 1 1, gain 1 1 1, saturation 1',
      'zoom 1.25',
      'Ramp: 6 frames, linear',
      'Scene: 12',
      'Note: cold night',
    ])
      expect(lost).toContain(line)
  })
})

describe('a reel cut anew by a list', () => {
  const START = 900_000
  const event = (source: number, record: number, length: number, name = 'ORLOP_RE') =>
    decision({
      source: name,
      sourceSpan: { from: START + source, to: START + source + length },
      recordSpan: { from: 90_000 + record, to: 90_000 + record + length },
    })
  const recut = (frames: number) => ({ ...REEL, frames, startsAt: 0 })

  it('gives each event the cue its source lies in, on its record place', () => {
    const made = planRecut(job, REEL_ID, list([event(260, 0, 50), event(50, 50, 100)]), recut(150))
    expect(made && rows(made)).toEqual([
      ['follows', 50],
      ['follows', 100],
      ['follows', 0],
      ['lost', undefined],
    ])
    expect(made?.rows[2]?.says).toBe('Its first 10 frames are not in the list.')
    expect(made?.rows[3]?.says).toBe('It is not in the list.')
  })

  it('speaks of the list, of no pictures and of no sureness', () => {
    const events = [event(260, 0, 50), event(0, 50, 50, 'OTHER'), event(260, 100, 50)]
    const made = planRecut(job, REEL_ID, list(events), recut(150))
    expect(made?.rows.map(({ says }) => says).join(' ')).toContain('The list has it 1 more time.')
    const report = made ? reconformReport(made) : ''
    expect(report).toMatch(/^Cues that follow a list: reel/u)
    expect(report).toContain('50 of 150 frames in the list.')
    expect(report).toContain('From elsewhere: a cue that changes nothing begins')
    expect(report).not.toMatch(/picture|% sure|found/u)
  })

  it('begins cues of their own for events of other sources and for gaps', () => {
    const made = planRecut(
      job,
      REEL_ID,
      list([
        event(0, 0, 100),
        event(0, 100, 8, 'TITLES'),
        event(100, 108, 50),
        event(300, 200, 50),
      ]),
      recut(250),
    )
    expect(made && begun(made)).toEqual([
      [100, undefined, 'cut'],
      [158, undefined, 'cut'],
    ])
  })

  it('tells of events that overlap, lie outside, or last another time than their source', () => {
    const slow = {
      ...event(100, 20, 10),
      sourceSpan: { from: START + 100, to: START + 105 },
      line: 7,
    }
    const made = planRecut(
      job,
      REEL_ID,
      list([event(0, 0, 30), slow, event(5000, 60, 10)]),
      recut(100),
    )
    expect(made?.notTaken.map(({ says, at }) => [says, at?.line])).toEqual([
      ['Event 2 does not last as long as its source; its frames are counted from its first.', 7],
      ['Event 3 lies outside the reel; it is left out.', undefined],
      ['Event 2 overlaps the one before; what overlaps is left out.', 7],
    ])
  })

  it('is nothing where the reel is not in the job', () => {
    expect(planRecut(job, 'reel-z' as typeof REEL_ID, list([]), recut(1))).toBe(undefined)
  })
})
