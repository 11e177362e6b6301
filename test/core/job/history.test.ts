import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/base/result.ts'
import { applyChange, invertChange, squashChanges } from '../../../src/core/job/change.ts'
import { joinCues } from '../../../src/core/job/commands/joinCues.ts'
import { keepBoundary } from '../../../src/core/job/commands/keepBoundary.ts'
import { moveBoundary } from '../../../src/core/job/commands/moveBoundary.ts'
import { placeCues } from '../../../src/core/job/commands/placeCues.ts'
import { setFraming } from '../../../src/core/job/commands/setFraming.ts'
import { setGrade } from '../../../src/core/job/commands/setGrade.ts'
import { setJobInfo } from '../../../src/core/job/commands/setJobInfo.ts'
import { setNote } from '../../../src/core/job/commands/setNote.ts'
import { setRamp } from '../../../src/core/job/commands/setRamp.ts'
import { setReel } from '../../../src/core/job/commands/setReel.ts'
import { splitCue } from '../../../src/core/job/commands/splitCue.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import {
  endGesture,
  type LabelledChange,
  newHistory,
  record,
  redo,
  undo,
} from '../../../src/core/job/history.ts'
import type { Job } from '../../../src/core/job/job.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { cueId, REEL_ID, sampleJob } from '../../support/sampleJob.ts'

type Command = (job: Job) => Result<LabelledChange>

let made = 100
const aCue = fc.integer({ min: 0, max: 20 })
const at = (job: Job, index: number) => {
  const cues = cuesOfReel(job, REEL_ID)
  return cues[index % cues.length]?.id ?? cueId(1)
}

/** Any command with any arguments, good or bad. */
const anyCommand: fc.Arbitrary<Command> = fc.oneof(
  fc.tuple(aCue, fc.double({ min: -0.5, max: 0.5, noNaN: true })).map(
    ([i, v]): Command =>
      (job) =>
        setGrade(job, [at(job, i)], (grade) => ({ ...grade, lift: [v, 0, v / 2] })),
  ),
  fc.tuple(aCue, fc.double({ min: -1, max: 10, noNaN: true })).map(
    ([i, zoom]): Command =>
      (job) =>
        setFraming(job, [at(job, i)], (framing) => ({ ...framing, zoom })),
  ),
  fc.integer({ min: 0, max: 1100 }).map(
    (n): Command =>
      (job) =>
        splitCue(job, REEL_ID, frame(n), cueId(made++)),
  ),
  aCue.map(
    (i): Command =>
      (job) =>
        joinCues(job, [at(job, i)]),
  ),
  fc.tuple(aCue, fc.integer({ min: 0, max: 999 })).map(
    ([i, n]): Command =>
      (job) =>
        moveBoundary(job, at(job, i), frame(n)),
  ),
  fc.tuple(aCue, fc.integer({ min: -2, max: 50 })).map(
    ([i, ramp]): Command =>
      (job) =>
        setRamp(job, [at(job, i)], ramp),
  ),
  fc.tuple(aCue, fc.string()).map(
    ([i, note]): Command =>
      (job) =>
        setNote(job, at(job, i), note),
  ),
  aCue.map(
    (i): Command =>
      (job) =>
        keepBoundary(job, [at(job, i)]),
  ),
  fc.string({ minLength: 1 }).map(
    (title): Command =>
      (job) =>
        setJobInfo(job, (info) => ({ ...info, title })),
  ),
  fc.string().map(
    (name): Command =>
      (job) =>
        setReel(job, REEL_ID, (reel) => ({ ...reel, name })),
  ),
  fc.integer({ min: 1, max: 999 }).map(
    (n): Command =>
      (job) =>
        placeCues(
          job,
          REEL_ID,
          [{ first: frame(n), ramp: 0, boundary: { kind: 'cut', confidence: 0.5 } }],
          () => cueId(made++),
        ),
  ),
)

const changesOf = (commands: readonly Command[]): { jobs: Job[]; changes: LabelledChange[] } => {
  const jobs = [sampleJob()]
  const changes: LabelledChange[] = []
  for (const command of commands) {
    const before = jobs.at(-1) as Job
    const result = command(before)
    if (!result.ok) continue
    changes.push(result.value)
    jobs.push(applyChange(before, result.value.change))
  }
  return { jobs, changes }
}

describe('changes and history', () => {
  it('undoes every command exactly', () => {
    fc.assert(
      fc.property(fc.array(anyCommand, { maxLength: 25 }), (commands) => {
        const { jobs, changes } = changesOf(commands)
        for (const [i, { change }] of changes.entries())
          expect(applyChange(jobs[i + 1] as Job, invertChange(change))).toEqual(jobs[i])
      }),
      { seed: 1, numRuns: 150 },
    )
  })

  it('squashes a run of changes into one that does the same', () => {
    fc.assert(
      fc.property(fc.array(anyCommand, { minLength: 1, maxLength: 15 }), (commands) => {
        const { jobs, changes } = changesOf(commands)
        const one = changes.reduce((all, { change }) => squashChanges(all, change), {})
        expect(applyChange(jobs[0] as Job, one)).toEqual(jobs.at(-1))
        expect(applyChange(jobs.at(-1) as Job, invertChange(one))).toEqual(jobs[0])
      }),
      { seed: 2, numRuns: 150 },
    )
  })

  it('goes back to the start and forward to the end through undo and redo', () => {
    fc.assert(
      fc.property(fc.array(anyCommand, { maxLength: 20 }), (commands) => {
        let history = newHistory(sampleJob())
        for (const command of commands) {
          const result = command(history.job)
          if (result.ok) history = record(history, result.value)
        }
        const end = history.job
        let back = history
        while (back.past.length > 0) back = undo(back)
        expect(back.job).toEqual(sampleJob())
        while (back.future.length > 0) back = redo(back)
        expect(back.job).toEqual(end)
      }),
      { seed: 3, numRuns: 100 },
    )
  })

  it('always leaves a first cue on frame 0, no two cues on a frame, and none past the reel', () => {
    fc.assert(
      fc.property(fc.array(anyCommand, { maxLength: 30 }), (commands) => {
        const job = changesOf(commands).jobs.at(-1) as Job
        const firsts = cuesOfReel(job, REEL_ID).map(({ first }) => first)
        expect(firsts[0]).toBe(0)
        expect(new Set(firsts).size).toBe(firsts.length)
        expect(Math.max(...firsts)).toBeLessThan(1000)
      }),
      { seed: 4, numRuns: 150 },
    )
  })

  it('makes one undo step of a drag, and another of the next', () => {
    const drag = (job: Job, gain: number) =>
      setGrade(job, [cueId(2)], (grade) => ({ ...grade, gain: [gain, 1, 1] }))
    let history = newHistory(sampleJob())
    for (const gain of [1.1, 1.2, 1.3]) {
      const change = drag(history.job, gain)
      if (change.ok) history = record(history, change.value, 'drag 1')
    }
    expect(history.past).toHaveLength(1)
    history = endGesture(history)
    const change = drag(history.job, 1.4)
    if (change.ok) history = record(history, change.value, 'drag 1')
    expect(history.past).toHaveLength(2)
    expect(undo(undo(history)).job).toEqual(sampleJob())
  })

  it('makes no undo step of a change that changes nothing', () => {
    const history = newHistory(sampleJob())
    const change = setRamp(history.job, [cueId(2)], 0)
    expect(change.ok && record(history, change.value)).toBe(history)
  })
})
