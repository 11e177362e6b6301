import { expect, it } from 'vitest'
import { JOB_VERSION, migrateDown } from '../../src/core/formats/job/migrations.ts'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { changedJson } from '../support/changedJson.ts'
import { fuzzReader, textInput } from '../support/fuzzReader.ts'
import { sampleJob } from '../support/sampleJob.ts'

const small = writeJob(sampleJob([0, 100], (cue) => ({ ...cue, note: 'n', ramp: 3 })))

it('reads or refuses whatever it is given, by line', async () => {
  const old = [1, 3].map((version) =>
    JSON.stringify(migrateDown(JSON.parse(small), version), undefined, 1),
  )
  expect(JOB_VERSION).toBeGreaterThan(3)
  const counts = await fuzzReader({
    seeds: textInput.seedsOf([small, ...old]),
    makeUp: (chance) => changedJson(small, chance),
    runs: 24_000,
    toInput: textInput.toInput,
    read: readJob,
  })
  expect(counts.read).toBeGreaterThan(1000)
  expect(counts.refused).toBeGreaterThan(10_000)
})
