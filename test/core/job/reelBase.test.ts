import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { IDENTITY_MATRIX3 } from '../../../src/core/colour/matrix3.ts'
import { type FilmBase, PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { migrateDown } from '../../../src/core/formats/job/migrations.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { setReel } from '../../../src/core/job/commands/setReel.ts'
import { newHistory, record } from '../../../src/core/job/history.ts'
import type { Job } from '../../../src/core/job/job.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

const withBase = (base: FilmBase): Job | undefined => {
  const job = sampleJob()
  const changed = setReel(job, REEL_ID, (reel) => ({ ...reel, base }))
  return changed.ok ? record(newHistory(job), changed.value).job : undefined
}

const number = fc.oneof(
  fc.double({ min: -12, max: 12, noNaN: true }),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, 0.05, 0.049, 10, 10.01),
)
const triple = fc.tuple(number, number, number)

describe('the base of a reel', () => {
  it('is read back exactly as it was written, wherever the command takes it', () => {
    let taken = 0
    const bases = fc.record<FilmBase>({
      scan: fc.constantFrom('print', 'printing-density', 'negative'),
      clear: fc.oneof(triple, fc.constant(PRINT_BASE.clear)),
      gamma: fc.oneof(triple, fc.constant(PRINT_BASE.gamma)),
      dyes: fc.oneof(fc.tuple(triple, triple, triple), fc.constant(IDENTITY_MATRIX3)),
      list: fc.constant(null),
    })
    fc.assert(
      fc.property(bases, (base) => {
        const job = withBase(base)
        if (!job) return
        taken++
        const read = readJob(writeJob(job))
        expect(read.ok && read.value.reels[REEL_ID]?.base).toEqual(JSON.parse(JSON.stringify(base)))
      }),
      { seed: 4, numRuns: 400 },
    )
    expect(taken).toBeGreaterThan(50)
  })

  it.each<Partial<FilmBase>>([
    { clear: [0, 10.01, 0] },
    { gamma: [0.6, 0.04, 0.6] },
    { gamma: [0.6, 0.6, Number.NaN] },
    { dyes: [[1, 0, 0], [0, Number.NEGATIVE_INFINITY, 0], IDENTITY_MATRIX3[2]] },
  ])('is refused past its limits: %j', (change) => {
    expect(withBase({ ...PRINT_BASE, ...change })).toBeUndefined()
  })

  it('is a print in a file of version 1, which knew no other', () => {
    const first = migrateDown(JSON.parse(writeJob(sampleJob())), 1)
    expect(JSON.stringify(first)).not.toContain('"base"')
    const read = readJob(JSON.stringify(first))
    expect(read.ok && read.value.reels[REEL_ID]?.base).toEqual(PRINT_BASE)
  })
})
