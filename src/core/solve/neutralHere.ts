import { assert, at } from '../base/assert.ts'
import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { type Grade, gradeColour } from '../colour/grade.ts'
import { allOf } from '../colour/gradeViews.ts'
import type { Triple } from '../colour/triple.ts'
import { type ChannelGrade, type GradeTerm, nearestChannel, solveChannel } from './solveChannel.ts'

export type NeutralGrade = {
  readonly grade: Grade
  /** The triples that were changed: as many as there are patches. */
  readonly changed: readonly GradeTerm[]
  /** False where numbers within the bounds only come near. */
  readonly isExact: boolean
  /** How far the graded channels of each patch are from its luma at most, as signal. */
  readonly residuals: readonly number[]
}

/** The level that a term moves most: black, the middle, peak white. */
const HOME: Readonly<Record<GradeTerm, number>> = { lift: 0, gamma: 0.5, gain: 1 }

/** The terms that one, two, three patches may change, from the darkest patch to the lightest. */
const CHOICES: readonly (readonly (readonly GradeTerm[])[])[] = [
  [['lift'], ['gamma'], ['gain']],
  [
    ['lift', 'gain'],
    ['lift', 'gamma'],
    ['gamma', 'gain'],
  ],
  [['lift', 'gamma', 'gain']],
]

/** Patches closer than this count as one: about three and a half 10-bit codes. */
const LEAST_STEP = 0.004

/** A scanned colour, and the level at which it is to be neutral. */
type Patch = { readonly scanned: Triple; readonly level: number }

/** Why these patches, dark to light, cannot be made neutral together; undefined where they can. */
const whyNot = (patches: readonly Patch[]): Result<never> | undefined => {
  if (patches.length === 3 && patches.every(({ level }) => level <= 0))
    return fail(
      problem(
        'out-of-range',
        'All three patches are at or below black, where no gamma moves them; take a lighter one.',
        { field: 'patches' },
      ),
    )
  for (const [i, lighter] of patches.entries()) {
    const darker = patches[i - 1]
    if (!darker) continue
    const steps = lighter.scanned.map((x, c) => x - at(darker.scanned, c))
    if ([...steps, lighter.level - darker.level].some((step) => Math.abs(step) < LEAST_STEP))
      return fail(
        problem(
          'conflict',
          `Two of the patches are too alike to set ${patches.length} terms by; take patches farther apart in level, or fewer.`,
          { field: 'patches' },
        ),
      )
    if (steps.some((step) => step < 0))
      return fail(
        problem(
          'conflict',
          'Of two patches one is darker in one channel and lighter in another, so that both cannot be neutral; take others.',
          { field: 'patches' },
        ),
      )
  }
  return undefined
}

/**
 * The grade that makes one to three scanned patches neutral (R′G′B′ before the grade), each at the
 * luma (BT.709 weights) that it has under the present grade. As many triples change as there are
 * patches: those whose own levels are nearest to the patches' (one patch in the shadows: lift; in
 * the middle: gamma; in the highlights: gain), or the next nearest where these cannot do it.
 * Saturation stays: it leaves neutral colours and luma alone.
 *
 * Exact for one or two patches wherever the numbers stay within `GRADE_BOUNDS`. For three, of
 * levels a < b < c above black, a channel with signals p < q < r has an exact solution where
 * (q − p)/(r − p) < ln(b/a)/ln(c/a), and one always where a is black, again within the bounds. Else
 * the grade with the least squares of what is left, and `isExact` is false.
 *
 * Refuses no patch or more than three, numbers that are not finite, patches too alike or that no
 * rising curve can make neutral together, and three at or below black.
 */
export const neutralHere = (patches: readonly Triple[], grade: Grade): Result<NeutralGrade> => {
  if (patches.length === 0)
    return fail(problem('missing', 'No patch is given; sample one that should be neutral.'))
  if (patches.length > 3)
    return fail(problem('too-large', `${patches.length} patches are given; give three at most.`))
  const graded = patches.map((scanned) => ({ scanned, level: allOf(gradeColour(scanned, grade)) }))
  if (graded.some(({ scanned, level }) => ![...scanned, level].every(Number.isFinite)))
    return fail(problem('out-of-range', 'A patch has a number that is not finite; sample again.'))
  const sorted = graded.toSorted((a, b) => a.level - b.level)
  const refusal = whyNot(sorted)
  if (refusal) return refusal

  const distance = (terms: readonly GradeTerm[]) =>
    terms.reduce((sum, term, i) => sum + Math.abs(HOME[term] - at(sorted, i).level), 0)
  const choices = at(CHOICES, patches.length - 1).toSorted((a, b) => distance(a) - distance(b))
  const channels = ([0, 1, 2] as const).map((c) => ({
    pairs: sorted.map(({ scanned, level }) => ({ x: scanned[c], y: level })),
    present: { lift: grade.lift[c], gamma: grade.gamma[c], gain: grade.gain[c] },
  }))
  const answer = (changed: readonly GradeTerm[], [r, g, b]: ChannelGrade[], isExact: boolean) => {
    assert(r !== undefined && g !== undefined && b !== undefined, 'a picture has three channels')
    const tripleOf = (term: GradeTerm): Triple => [r[term], g[term], b[term]]
    const solved: Grade = {
      lift: tripleOf('lift'),
      gamma: tripleOf('gamma'),
      gain: tripleOf('gain'),
      saturation: grade.saturation,
    }
    const residuals = graded.map(({ scanned, level }) =>
      Math.max(...gradeColour(scanned, solved).map((value) => Math.abs(value - level))),
    )
    return ok({ grade: solved, changed, isExact, residuals })
  }
  for (const changed of choices) {
    const exact = channels.flatMap((c) => solveChannel(c.pairs, c.present, changed) ?? [])
    if (exact.length === 3) return answer(changed, exact, true)
  }
  const best = at(choices, 0)
  const nearest = channels.map(({ pairs, present }) => nearestChannel(pairs, present, best))
  return answer(best, nearest, false)
}
