import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { type Grade, gradeColour } from '../../src/core/colour/grade.ts'
import { correctionIds } from '../../src/core/formats/cdl/correctionIds.ts'
import { handOverFiles } from '../../src/core/formats/handOverFiles.ts'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import { between, randomGrade, seeded } from '../kernel/randomPictures.ts'
import { readStill } from '../support/readStill.ts'
import { REEL_ID, sampleJob, sampleReel } from '../support/sampleJob.ts'
import { applyFiles, largestDifference } from './openColorIo.ts'

const random = seeded(22)
const folder = mkdtempSync(join(tmpdir(), 'reelwright-cdl-'))
afterAll(() => rmSync(folder, { recursive: true }))

const CUES = 8

const grades: readonly Grade[] = Array.from({ length: CUES }, () => randomGrade(random))
const job = sampleJob(
  Array.from({ length: CUES }, (_, i) => 10 * i),
  (cue, i) => ({
    ...cue,
    grade: grades[i] ?? cue.grade,
    note: 'R′ & <B′>',
    foreign: i === 1 ? [{ format: 'cdl', text: '{"id":"shot.12"}' }] : [],
  }),
)
const { ids } = correctionIds(sampleReel(), cuesOfReel(job, REEL_ID))

/** A photograph, each value moved off its 8-bit step and some below black and above peak. */
const pixels = readStill('dust-bowl-home-128').pixels.map((colour) => {
  const off = () => Math.fround(between(random, -0.08, 0.08))
  return [
    Math.fround(colour[0] + off()),
    Math.fround(colour[1] + off()),
    Math.fround(colour[2] + off()),
  ] as const
})

test.each(['cc', 'ccc', 'cdl'] as const)(
  'OpenColorIO grades a photograph by a written .%s as we do, within 2e-5',
  (format) => {
    const made = handOverFiles(job, REEL_ID, format)
    if (!made.ok) throw new Error(made.problems[0].says)
    const files = made.value.files.map(({ name, text }) => {
      writeFileSync(join(folder, name), text)
      return join(folder, name)
    })
    expect(files).toHaveLength(format === 'cc' ? CUES : 1)
    const pairs = ids.map((id, i) =>
      format === 'cc' ? { file: files[i] ?? '', id: '' } : { file: files[0] ?? '', id },
    )
    const theirs = applyFiles(pairs, pixels)
    const worst = grades.map((grade, i) =>
      largestDifference(
        pixels.map((colour) => gradeColour(colour, grade)),
        theirs[i],
      ),
    )
    console.log(
      `.${format} by OpenColorIO: largest difference ${Math.max(...worst).toExponential(1)}`,
    )
    for (const each of worst) expect(each).toBeLessThan(2e-5)
  },
)
