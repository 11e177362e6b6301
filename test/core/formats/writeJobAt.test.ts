import { expect, it } from 'vitest'
import type { PackRecord } from '../../../src/core/agreement/answer.ts'
import { PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { NO_PARTICULARS } from '../../../src/core/film/particulars.ts'
import { JOB_VERSION } from '../../../src/core/formats/job/migrations.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { writeJobAt } from '../../../src/core/formats/job/writeJobAt.ts'
import type { Cue } from '../../../src/core/job/job.ts'
import type { PackId, PassId } from '../../../src/core/job/recordIds.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { INITIAL_TRANSFER } from '../../../src/core/transfer/transferSettings.ts'
import { says } from '../../support/lossWords.ts'
import { answerOf } from '../../support/sampleAnswer.ts'
import { sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { samplePass } from '../../support/samplePass.ts'

/** A cue that every version but the newest loses something of. */
const full = (cue: Cue, index: number): Cue =>
  index === 1
    ? {
        ...cue,
        ramp: 8,
        rampShape: 'eased',
        scene: '12',
        gradeName: 'B',
        alternates: [{ name: 'A', grade: cue.grade }],
        framing: { ...cue.framing, rotation: 2 },
        foreign: [{ format: 'edl', text: '{}' }],
        answers: [answerOf(cue)],
      }
    : cue

const WITHOUT_PASS = sampleJob(
  [0, 100],
  full,
  sampleReel({
    media: { ...sampleReel().media, checksum: 'a'.repeat(64) },
    gauge: 'super16',
    particulars: { ...NO_PARTICULARS, support: 'acetate' },
    guide: { name: 'a.wav', madeFor: rate(24), mark: { frame: 0, seconds: 2 } },
    lineUps: [{ at: '2026-11-20T09:00:00Z', says: 'Open gate.' }],
    transfer: { ...INITIAL_TRANSFER, format: 'av1' },
    base: {
      ...PRINT_BASE,
      scan: 'negative',
      list: {
        name: 'a',
        steps: [{ kind: 'range', low: [0, 0], high: null, clamps: true }],
      },
    },
  }),
)

const PACK: PackRecord = {
  id: 'pack-1' as PackId,
  madeAt: '2026-11-27T09:00:00.000Z',
  madeFor: 'Ines',
  cues: 2,
  key: null,
}
const JOB = {
  ...WITHOUT_PASS,
  passes: { ['pass-1' as PassId]: samplePass() },
  packs: { [PACK.id]: PACK },
}

it.each([
  [7, ['What was found in the can', 'The guide track', 'the film is Super 16']],
  [6, ['Who said what and when', 'The review packs']],
  [5, ['The record of the passes', 'How the reel is transferred', 'line-ups', 'checksum']],
  [4, ['The process list', 'What other lists said of cue 2']],
  [3, ['eased shape', 'alternates of cue 2', 'name of the grade', 'scene mark of cue 2']],
  [2, ['Rotation, squeeze and blanking of cue 2']],
  [1, ['The base, which makes video']],
] as const)('version %i is read again, and says what it adds to the losses', (version, added) => {
  const { text, losses } = writeJobAt(JOB, version)
  expect(JSON.parse(text).version).toBe(version)
  expect(readJob(text).ok).toBe(true)
  const earlier = says(writeJobAt(JOB, version + 1).losses)
  for (const words of added) {
    expect(says(losses)).toContain(words)
    expect(earlier).not.toContain(words)
  }
})

it('loses nothing of a job that has nothing a version lacks, nor in the newest version', () => {
  const plain = sampleJob()
  expect(writeJobAt(plain, 1).losses).toEqual([])
  const read = readJob(writeJobAt(plain, 1).text)
  expect(read.ok && read.value).toEqual(plain)
  expect(writeJobAt(JOB, JOB_VERSION)).toEqual({ text: writeJob(JOB), losses: [] })
})
