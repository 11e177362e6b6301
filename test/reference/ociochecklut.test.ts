import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { writeClf } from '../../src/core/formats/clf/writeClf.ts'
import { SAMPLE_BASES } from '../support/sampleBases.ts'
import { REEL_ID, sampleJob, sampleReel } from '../support/sampleJob.ts'

const folder = mkdtempSync(join(tmpdir(), 'reelwright-checklut-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** Whether the program takes a file without a word, and all it says. */
const check = (text: string) => {
  const file = join(folder, 'list.clf')
  writeFileSync(file, text)
  const { status, stdout, stderr } = spawnSync('ociochecklut', [file, '0.5', '0.4', '0.3'], {
    encoding: 'utf8',
  })
  return { status, said: `${stdout}${stderr}` }
}

test.each(SAMPLE_BASES)('ociochecklut takes every process list of $name', ({ base }) => {
  const job = sampleJob(
    [0, 100, 250],
    (cue, i) => ({
      ...cue,
      note: 'R′ & <B′>',
      grade: { lift: [-0.05, 0, 0.1], gamma: [1 + i, 0.3, 1], gain: [1.5, 0, 0.9], saturation: i },
    }),
    sampleReel({ base }),
  )
  const written = writeClf(job, REEL_ID)
  if (!written.ok) throw new Error(written.problems[0].says)
  expect(written.value.files).toHaveLength(3)
  for (const { text } of written.value.files) {
    const { status, said } = check(text)
    expect(said).not.toMatch(/warning|error/iu)
    expect(status).toBe(0)
  }
})

test('ociochecklut refuses the illegal files that we refuse', () => {
  const media = resolve(import.meta.dirname, '../media/interchange/clf')
  for (const name of ['illegal-cdl_bad_sat.clf', 'illegal-cdl_bad_slope.clf'])
    expect(check(readFileSync(`${media}/${name}`, 'utf8')).status).not.toBe(0)
})
