import { expect, test } from 'vitest'
import { type Grade, gradeColour, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { allOf } from '../../../src/core/colour/gradeViews.ts'
import { mapTriple, type Triple, triple } from '../../../src/core/colour/triple.ts'
import { type NeutralGrade, neutralHere } from '../../../src/core/solve/neutralHere.ts'
import { seeded } from '../../support/seeded.ts'

const solved = (patches: readonly Triple[], grade: Grade): NeutralGrade => {
  const result = neutralHere(patches, grade)
  if (!result.ok) throw new Error(result.problems[0].says)
  return result.value
}

const problemOf = (patches: readonly Triple[], grade = IDENTITY_GRADE) => {
  const result = neutralHere(patches, grade)
  return result.ok ? undefined : result.problems[0]
}

/** How far the graded patches are from neutral at the luma they had, at most. */
const worstOf = (patches: readonly Triple[], before: Grade, after: Grade): number =>
  Math.max(
    ...patches.flatMap((patch) => {
      const luma = allOf(gradeColour(patch, before))
      return gradeColour(patch, after).map((value) => Math.abs(value - luma))
    }),
  )

const GRADED: Grade = {
  lift: [0.02, 0, -0.01],
  gamma: [1.1, 1, 0.95],
  gain: [1.05, 0.98, 1.1],
  saturation: 1.3,
}

const random = seeded(3)
const between = (low: number, high: number) => low + (high - low) * random()
const near = (level: number, spread: number): Triple =>
  mapTriple(triple(level), (value) => value + between(-spread, spread))

test('one patch changes the one triple whose level is nearest', () => {
  const dark = solved([[0.12, 0.1, 0.08]], IDENTITY_GRADE)
  const middle = solved([[0.5, 0.45, 0.42]], IDENTITY_GRADE)
  const light = solved([[0.9, 0.92, 0.85]], IDENTITY_GRADE)
  expect([dark, middle, light].map(({ changed }) => changed)).toEqual([
    ['lift'],
    ['gamma'],
    ['gain'],
  ])
  expect(dark.grade).toEqual({ ...IDENTITY_GRADE, lift: dark.grade.lift })
  expect(middle.grade).toEqual({ ...IDENTITY_GRADE, gamma: middle.grade.gamma })
  expect(light.grade).toEqual({ ...IDENTITY_GRADE, gain: light.grade.gain })
})

test('one and two random patches come out neutral at their luma, whatever the grade', () => {
  for (let n = 0; n < 300; n++) {
    const one = [near(between(0.05, 0.95), 0.04)]
    const two = [near(between(0.05, 0.35), 0.03), near(between(0.55, 0.95), 0.05)]
    for (const patches of [one, two])
      for (const grade of [IDENTITY_GRADE, GRADED]) {
        const { grade: after, isExact, changed } = solved(patches, grade)
        expect(isExact).toBe(true)
        expect(changed.length).toBe(patches.length)
        expect(worstOf(patches, grade, after)).toBeLessThan(1e-9)
        expect(after.saturation).toBe(grade.saturation)
      }
  }
})

test('shadow, middle and highlight come out neutral at their luma, all three triples changed', () => {
  for (let n = 0; n < 300; n++) {
    const patches = [near(0.1, 0.03), near(0.48, 0.05), near(0.88, 0.04)]
    const { grade: after, isExact, residuals } = solved(patches, GRADED)
    expect(isExact).toBe(true)
    expect(worstOf(patches, GRADED, after)).toBeLessThan(1e-9)
    expect(Math.max(...residuals)).toBeLessThan(1e-9)
  }
})

test('the cast that a grade put on three greys is found again', () => {
  const cast: Grade = {
    lift: [0.03, -0.01, 0.02],
    gamma: [0.9, 1.1, 1.2],
    gain: [0.95, 1.02, 0.9],
    saturation: 1,
  }
  // A scan that `cast` makes neutral: each grey taken back through it.
  const scanned = [0.1, 0.5, 0.9].map((grey) =>
    mapTriple(
      triple(grey),
      (y, c) => (y ** cast.gamma[c] - cast.lift[c]) / (cast.gain[c] - cast.lift[c]),
    ),
  )
  const start: Grade = { ...IDENTITY_GRADE, saturation: 1 }
  const { grade } = solved(scanned, start)
  // The same up to one curve common to the channels, which luma fixes: greys stay in step.
  for (const grey of [0.2, 0.35, 0.7]) {
    const between = mapTriple(
      triple(grey),
      (y, c) => (y ** cast.gamma[c] - cast.lift[c]) / (cast.gain[c] - cast.lift[c]),
    )
    const graded = gradeColour(between, grade)
    expect(Math.max(...graded) - Math.min(...graded)).toBeLessThan(0.004)
  }
})

test('patches that are neutral already change nothing that can be seen', () => {
  const { grade } = solved([triple(0.1), triple(0.5), triple(0.9)], IDENTITY_GRADE)
  for (const value of [
    ...grade.lift,
    ...grade.gamma.map(Math.log),
    ...grade.gain.map((v) => v - 1),
  ])
    expect(Math.abs(value)).toBeLessThan(1e-9)
})

test('a patch at or below black is made neutral by lift', () => {
  const patches: readonly Triple[] = [[-0.02, 0.01, -0.01]]
  const { grade, changed } = solved(patches, IDENTITY_GRADE)
  expect(changed).toEqual(['lift'])
  expect(worstOf(patches, IDENTITY_GRADE, grade)).toBeLessThan(1e-9)
})

test('three patches that no curve within bounds joins get the nearest one, and it is said', () => {
  // Red rises late: the middle one is nearly as dark as the shadow, beyond any gamma up to 5.
  const patches: readonly Triple[] = [
    [0.2, 0.1, 0.1],
    [0.205, 0.7, 0.7],
    [0.9, 0.8, 0.8],
  ]
  const { grade, isExact, residuals } = solved(patches, IDENTITY_GRADE)
  expect(isExact).toBe(false)
  expect(worstOf(patches, IDENTITY_GRADE, grade)).toBeCloseTo(Math.max(...residuals), 9)
  // No other red within the bounds has smaller squares: looked for on a grid.
  const squares = (lift: number, gamma: number, gain: number) =>
    patches.reduce((sum, patch) => {
      const v = lift + (gain - lift) * patch[0]
      const y = v > 0 ? v ** (1 / gamma) : v
      return sum + (y - allOf(patch)) ** 2
    }, 0)
  const found = squares(grade.lift[0], grade.gamma[0], grade.gain[0])
  let least = Number.POSITIVE_INFINITY
  for (let lift = -1; lift <= 1; lift += 0.05)
    for (let gamma = 0.1; gamma <= 5; gamma += 0.1)
      for (let gain = lift + 0.01; gain <= 4; gain += 0.05)
        least = Math.min(least, squares(lift, gamma, gain))
  expect(found).toBeLessThanOrEqual(least + 1e-9)
})

test('what cannot be solved is refused with a reason', () => {
  expect(problemOf([])?.code).toBe('missing')
  expect(problemOf([0.1, 0.3, 0.5, 0.7].map((v) => triple(v)))?.code).toBe('too-large')
  expect(problemOf([[0.1, Number.NaN, 0.1]])?.code).toBe('out-of-range')
  expect(problemOf([[0.1, Number.POSITIVE_INFINITY, 0.1]])?.code).toBe('out-of-range')
  expect(problemOf([triple(0.5), triple(0.502)])?.says).toMatch(/too alike/)
  expect(
    problemOf([
      [0.5, 0.3, 0.3],
      [0.5, 0.6, 0.6],
    ])?.says,
  ).toMatch(/too alike/)
  expect(
    problemOf([
      [0.6, 0.3, 0.3],
      [0.5, 0.7, 0.7],
    ])?.says,
  ).toMatch(/both cannot be neutral/)
  expect(problemOf([triple(-0.3), triple(-0.2), triple(-0.1)])?.says).toMatch(/at or below black/)
})
