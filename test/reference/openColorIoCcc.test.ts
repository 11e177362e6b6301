import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { gradeToCdl } from '../../src/core/colour/cdl.ts'
import type { Grade } from '../../src/core/colour/grade.ts'
import type { Triple } from '../../src/core/colour/triple.ts'
import { writeCcc } from '../../src/core/formats/cdl/writeCdl.ts'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import { between, randomGrade, seeded } from '../kernel/randomPictures.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'
import { readCollections } from './openColorIo.ts'

const random = seeded(21)
const folder = mkdtempSync(join(tmpdir(), 'reelwright-ccc-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** Numbers of every size, from far below what shows to far above what makes sense. */
const wildGrade = (): Grade => {
  const triple = (): Triple => {
    const any = () => between(random, 0.1, 1) * 10 ** Math.floor(between(random, -9, 5))
    return [any(), any(), any()]
  }
  const lift = triple()
  const [r, g, b] = triple()
  return {
    lift,
    gamma: triple(),
    gain: [lift[0] + r, lift[1] + g, lift[2] + b],
    saturation: between(random, 0, 3),
  }
}

test('OpenColorIO reads in our collections the numbers of the grades', () => {
  const firsts = Array.from({ length: 250 }, (_, i) => i * 4)
  const jobs = [() => randomGrade(random), wildGrade].map((grade) =>
    sampleJob(firsts, (cue) => ({ ...cue, grade: grade(), note: 'R′ & <B′>' })),
  )
  const files = jobs.map((job, i) => {
    const written = writeCcc(job, REEL_ID)
    if (!written.ok) throw new Error(written.problems[0].says)
    const file = join(folder, `${i}.ccc`)
    writeFileSync(file, written.value.files[0]?.text ?? '')
    return file
  })
  const read = readCollections(files)
  for (const [i, job] of jobs.entries()) {
    const corrections = read[i] ?? []
    expect(new Set(corrections.map(({ id }) => id)).size).toBe(firsts.length)
    expect(corrections.map(({ id: _, ...cdl }) => cdl)).toEqual(
      cuesOfReel(job, REEL_ID).map(({ grade }) => gradeToCdl(grade)),
    )
  }
})
