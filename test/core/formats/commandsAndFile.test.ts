import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/base/result.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { applyChange } from '../../../src/core/job/change.ts'
import { addHouseProfile } from '../../../src/core/job/commands/addHouseProfile.ts'
import { CARRIED_PARTS, carryValues } from '../../../src/core/job/commands/carryValues.ts'
import { joinCues } from '../../../src/core/job/commands/joinCues.ts'
import {
  dropAlternate,
  keepAlternate,
  promoteAlternate,
  renameGrade,
} from '../../../src/core/job/commands/keepAlternate.ts'
import { moveBoundary } from '../../../src/core/job/commands/moveBoundary.ts'
import { placeCues } from '../../../src/core/job/commands/placeCues.ts'
import { removeHouseProfile } from '../../../src/core/job/commands/removeHouseProfile.ts'
import { setFraming } from '../../../src/core/job/commands/setFraming.ts'
import { setGrade } from '../../../src/core/job/commands/setGrade.ts'
import { setHouseProfile } from '../../../src/core/job/commands/setHouseProfile.ts'
import { setJobInfo } from '../../../src/core/job/commands/setJobInfo.ts'
import { setNote } from '../../../src/core/job/commands/setNote.ts'
import { setRamp } from '../../../src/core/job/commands/setRamp.ts'
import { setReel } from '../../../src/core/job/commands/setReel.ts'
import { splitCue } from '../../../src/core/job/commands/splitCue.ts'
import { trimFraming } from '../../../src/core/job/commands/trimFraming.ts'
import { trimGrade } from '../../../src/core/job/commands/trimGrade.ts'
import type { LabelledChange } from '../../../src/core/job/history.ts'
import type { Job } from '../../../src/core/job/job.ts'
import type { CueId } from '../../../src/core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { EBU_R103_V3, PUBLISHED_PROFILES } from '../../../src/core/tolerance/profile.ts'
import { cueId, REEL_ID, sampleJob } from '../../support/sampleJob.ts'

/** Ids are never used twice, as with `newCueId`. */
let made = 0
const newId = () => `cue-made-${made++}` as CueId

type Step = (job: Job) => Result<LabelledChange>

/** Any number a caller could hand in, the plain ones often. −0 is left out: text has no −0. */
const anyNumber = fc
  .oneof(
    fc.double({ min: -2, max: 6, noNaN: true }),
    fc.double(),
    fc.constantFrom(1e-7, 1e-6, 1e6, 1e6 + 1, 5e-324, Number.MAX_VALUE),
  )
  .map((value) => value + 0)
const anyTriple = fc.tuple(anyNumber, anyNumber, anyNumber)
const anyFrame = fc.integer({ min: -3, max: 1003 }).map(frame)
const anyText = fc.oneof(
  fc.string(),
  fc.constantFrom('', ' ', 'é'.repeat(1000), 'n'.repeat(4001), 'ab\r\ncd', '\ud800', '−😀\u0000'),
)
const anyProfileId = fc.constantFrom(
  'house-1',
  'house-2',
  'narrow-range',
  'composite-625',
  'no one',
)
const anyLimits = fc.tuple(anyNumber, anyNumber)
const anyCue = fc.integer({ min: 1, max: 6 }).map(cueId)

const anyStep: fc.Arbitrary<Step> = fc.oneof(
  fc.tuple(anyCue, anyTriple, anyTriple, anyTriple, anyNumber).map(
    ([id, lift, gamma, gain, saturation]): Step =>
      (job) =>
        setGrade(job, [id], () => ({ lift, gamma, gain, saturation })),
  ),
  fc
    .tuple(
      anyCue,
      fc.constantFrom<0 | 1 | 2>(0, 1, 2),
      fc.constantFrom('lift', 'gain', 'gamma'),
      anyNumber,
    )
    .map(
      ([id, channel, stage, value]): Step =>
        (job) =>
          setGrade(job, [id], (grade) => ({
            ...grade,
            [stage]: [0, 1, 2].map((c) => (c === channel ? value : grade[stage as 'lift'][c])),
          })),
    ),
  fc.tuple(anyCue, anyNumber, anyNumber, anyNumber).map(
    ([id, zoom, pan, turn]): Step =>
      (job) =>
        setFraming(job, [id], (framing) => ({
          ...framing,
          zoom,
          pan,
          tilt: turn / 3,
          rotation: turn,
          squeeze: zoom / 2,
          blanking: pan / 2,
        })),
  ),
  fc.tuple(anyCue, anyText).map(
    ([id, note]): Step =>
      (job) =>
        setNote(job, id, note),
  ),
  fc.tuple(anyCue, fc.oneof(fc.integer(), anyNumber)).map(
    ([id, ramp]): Step =>
      (job) =>
        setRamp(job, [id], ramp),
  ),
  fc.tuple(anyCue, anyFrame).map(
    ([id, at]): Step =>
      (job) =>
        moveBoundary(job, id, at),
  ),
  anyFrame.map(
    (at): Step =>
      (job) =>
        splitCue(job, REEL_ID, at, newId()),
  ),
  anyCue.map(
    (id): Step =>
      (job) =>
        joinCues(job, [id]),
  ),
  fc.array(anyFrame, { maxLength: 4 }).map(
    (firsts): Step =>
      (job) => {
        const boundary = { kind: 'cut', confidence: 0.7 } as const
        const places = firsts.map((first) => ({ first, ramp: 0, boundary }))
        return placeCues(job, REEL_ID, places, newId)
      },
  ),
  anyText.map(
    (title): Step =>
      (job) =>
        setJobInfo(job, (info) => ({ ...info, title })),
  ),
  anyText.map(
    (name): Step =>
      (job) =>
        setReel(job, REEL_ID, (reel) => ({ ...reel, name })),
  ),
  fc.tuple(anyProfileId, fc.constantFrom(...PUBLISHED_PROFILES)).map(
    ([id, from]): Step =>
      (job) =>
        addHouseProfile(job, from, id),
  ),
  fc
    .oneof(
      anyText.map((name) => ({ name })),
      anyText.map((source) => ({ source })),
      fc.option(anyLimits).map((rgb) => ({ rgb })),
      anyLimits.map((luma) => ({ luma })),
      fc.option(anyLimits).map((composite) => ({ composite })),
      anyNumber.map((area) => ({ area })),
      fc.boolean().map((filtered) => ({ filtered })),
    )
    .map(
      (change): Step =>
        (job) =>
          setHouseProfile(job, 'house-1', (profile) => ({ ...profile, ...change })),
    ),
  anyProfileId.map(
    (id): Step =>
      (job) =>
        removeHouseProfile(job, id),
  ),
  fc.tuple(anyCue, fc.integer({ min: -1, max: 13 }), anyText).map(
    ([id, index, name]): Step =>
      (job) =>
        renameGrade(job, id, index, name),
  ),
  fc.tuple(anyCue, fc.constantFrom(promoteAlternate, dropAlternate), fc.nat({ max: 2 })).map(
    ([id, change, index]): Step =>
      (job) =>
        change(job, id, index),
  ),
  anyCue.map(
    (id): Step =>
      (job) =>
        keepAlternate(job, [id]),
  ),
  fc.tuple(anyCue, anyCue, fc.subarray([...CARRIED_PARTS])).map(
    ([from, to, parts]): Step =>
      (job) => {
        const cue = job.cues[from]
        return cue ? carryValues(job, [to], cue, parts) : keepAlternate(job, [from])
      },
  ),
  fc.tuple(anyCue, anyCue, anyTriple, anyNumber).map(
    ([id, other, gain, saturation]): Step =>
      (job) => {
        const grade = job.cues[id]?.grade ?? IDENTITY_GRADE
        return trimGrade(job, [id, other], grade, { ...grade, gain, saturation })
      },
  ),
  fc.tuple(anyCue, anyCue, anyNumber, anyNumber).map(
    ([id, other, zoom, pan]): Step =>
      (job) =>
        trimFraming(job, [id, other], IDENTITY_FRAMING, { ...IDENTITY_FRAMING, zoom, pan }),
  ),
  anyProfileId.map(
    (tolerance): Step =>
      (job) =>
        setJobInfo(job, (info) => ({ ...info, tolerance })),
  ),
)

const plain = sampleJob()
const house = { ...EBU_R103_V3, id: 'house-1', name: 'House rule' }
const housed: Job = { ...plain, info: { job: { ...plain.info.job, profiles: [house] } } }

describe('commands and the job file', () => {
  it('agree: whatever commands make of a job can be written and read back', () => {
    let done = 0
    let refused = 0
    let changedHouse = 0
    fc.assert(
      fc.property(fc.array(anyStep, { minLength: 1, maxLength: 6 }), (steps) => {
        let job = housed
        for (const step of steps) {
          const result = step(job)
          if (result.ok) job = applyChange(job, result.value.change)
          if (result.ok) done++
          else refused++
        }
        if (
          job.info.job.profiles.some(({ id }) => id === house.id) &&
          !job.info.job.profiles.includes(house)
        )
          changedHouse++
        expect(readJob(writeJob(job))).toEqual({ ok: true, value: job })
      }),
      { seed: 1, numRuns: 3000 },
    )
    expect(done).toBeGreaterThan(1000)
    expect(refused).toBeGreaterThan(1000)
    expect(changedHouse).toBeGreaterThan(200)
  })
})
