import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { type Grade, gradeColour } from '../../src/core/colour/grade.ts'
import type { Triple } from '../../src/core/colour/triple.ts'
import { baseColour } from '../../src/core/film/filmBase.ts'
import { readClf } from '../../src/core/formats/clf/readClf.ts'
import { writeClf } from '../../src/core/formats/clf/writeClf.ts'
import { applyProcess } from '../../src/core/process/applyProcess.ts'
import { between, seeded } from '../kernel/randomPictures.ts'
import { readStill } from '../support/readStill.ts'
import { SAMPLE_BASES } from '../support/sampleBases.ts'
import { REEL_ID, sampleJob, sampleReel } from '../support/sampleJob.ts'
import { applyFiles, largestDifference } from './openColorIo.ts'

const random = seeded(23)
const folder = mkdtempSync(join(tmpdir(), 'reelwright-clf-'))
afterAll(() => rmSync(folder, { recursive: true }))

const GRADE: Grade = {
  lift: [0.02, 0.01, 0.03],
  gamma: [1.15, 1.05, 1.1],
  gain: [1.1, 1, 0.95],
  saturation: 1.2,
}

const QUARTER_CODE = 0.25 / 876

/** A photograph, and random levels over narrow-range codes 1…1019: all float32. */
const pixels: readonly Triple[] = [
  ...readStill('coffee-128').pixels,
  ...Array.from({ length: 10_000 }, (): Triple => {
    const level = () => (random() < 0.2 ? between(random, 0, 0.02) : between(random, -0.07, 1.09))
    return [level(), level(), level()]
  }),
].map(([r, g, b]) => [Math.fround(r), Math.fround(g), Math.fround(b)])

test.each(SAMPLE_BASES)(
  'OpenColorIO makes of pixels by the process list of $name what we do, within 2e-5',
  ({ name, base }) => {
    const job = sampleJob([0], (cue) => ({ ...cue, grade: GRADE }), sampleReel({ base }))
    const written = writeClf(job, REEL_ID)
    if (!written.ok) throw new Error(written.problems[0].says)
    const text = written.value.files[0]?.text ?? ''
    const file = join(folder, `${name.replaceAll(' ', '-')}.clf`)
    writeFileSync(file, text)
    const read = readClf(text)
    if (!read.ok) throw new Error(read.problems[0].says)
    const [theirs = []] = applyFiles([{ file, id: '' }], pixels)
    const ours = pixels.map((colour) => applyProcess(read.value.list, colour))
    const exact = pixels.map((colour) => gradeColour(baseColour(colour, base), GRADE))
    const fromOurs = largestDifference(ours, theirs)
    const fromExact = largestDifference(exact, theirs)
    console.log(
      `${name}: OpenColorIO from our reading ${fromOurs.toExponential(1)}, from the job ${(fromExact * 876).toFixed(3)} codes`,
    )
    expect(fromOurs).toBeLessThan(2e-5)
    expect(fromExact).toBeLessThan(QUARTER_CODE)
  },
)
