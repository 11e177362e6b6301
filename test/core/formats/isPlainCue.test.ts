import fc from 'fast-check'
import * as v from 'valibot'
import { expect, it } from 'vitest'
import { isPlainCue } from '../../../src/core/formats/job/isPlainCue.ts'
import { cueSchema } from '../../../src/core/formats/job/jobSchema.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import { answerOf } from '../../support/sampleAnswer.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

const [PLAIN] = cuesOfReel(sampleJob(), REEL_ID)
const CUE = PLAIN && {
  ...PLAIN,
  alternates: [{ name: 'A', grade: PLAIN.grade }],
  answers: [answerOf(PLAIN, { marks: [[[0.1, 0.2]]], frame: 3 })],
}

/** Every place in a cue that holds a value, as a path. */
const paths = (value: unknown, path: readonly string[] = []): readonly (readonly string[])[] =>
  typeof value === 'object' && value !== null
    ? [path, ...Object.entries(value).flatMap(([key, each]) => paths(each, [...path, key]))]
    : [path]

const PATHS = paths(CUE).filter((path) => path.length > 0)

const withValue = (path: readonly string[], value: unknown): unknown => {
  const copy = structuredClone(CUE) as unknown as Record<string, unknown>
  let at = copy
  for (const key of path.slice(0, -1)) at = at[key] as Record<string, unknown>
  const last = path.at(-1) ?? ''
  // JSON has no holes in its lists.
  if (value === undefined && Array.isArray(at)) at.splice(Number(last), 1)
  else if (value === undefined) delete at[last]
  else at[last] = value
  return copy
}

const anyValue = fc.oneof(
  fc.double(),
  fc.integer(),
  fc.string(),
  fc.boolean(),
  fc.constantFrom(
    undefined,
    null,
    [],
    {},
    [1, 1, 1],
    [1, 2],
    [0, 0, 0, 0],
    'cut',
    'agreed',
    'a'.repeat(4001),
  ),
  fc.constantFrom(0, 1, -1, 0.25, 8, 10_000, 10_001, 1e6, 1e6 + 1, Number.MAX_SAFE_INTEGER),
)

it('the quick look at a cue and the schema always agree', () => {
  expect(isPlainCue(CUE)).toBe(true)
  fc.assert(
    fc.property(fc.constantFrom(...PATHS), anyValue, (path, value) => {
      const cue = withValue(path, value)
      expect(isPlainCue(cue)).toBe(v.is(cueSchema, cue))
    }),
    { seed: 1, numRuns: 20_000 },
  )
  fc.assert(
    fc.property(fc.constantFrom(...PATHS), fc.string({ minLength: 1 }), (path, key) => {
      const cue = withValue([...path.slice(0, -1), key], 1)
      expect(isPlainCue(cue)).toBe(v.is(cueSchema, cue))
    }),
    { seed: 2, numRuns: 5000 },
  )
})
