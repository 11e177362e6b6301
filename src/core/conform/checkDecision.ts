import { type Problem, problem } from '../base/problem.ts'
import type { Decision, DecisionValues } from '../formats/decisionList.ts'
import { checkGrade } from '../job/checkGrade.ts'
import { FRAMING_LIMITS } from '../job/commands/setFraming.ts'
import { NOTE_LIMIT } from '../job/commands/setNote.ts'
import type { Foreign } from '../job/job.ts'
import { CUE_FOREIGN_LIMIT, GRADE_NAME_LIMIT, MOST_ALTERNATES, SCENE_LIMIT } from '../job/limits.ts'
import type { Framing } from '../picture/framing.ts'

const LONGEST_RAMP = 10_000

const isFramingWithin = (framing: Framing): boolean =>
  Object.entries(FRAMING_LIMITS).every(([field, [low, high]]) => {
    const value = framing[field as keyof Framing]
    return value >= low && value <= high
  })

/** The first of a cue's values that a job does not hold, in words; undefined if it holds all. */
export const misfitOfGrades = ({
  grade,
  gradeName,
  alternates,
  framing,
  scene,
  note,
}: DecisionValues): string | undefined => {
  for (const each of [grade, ...(alternates ?? []).map((alternate) => alternate.grade)]) {
    const checked = each ? checkGrade(each) : undefined
    if (checked && !checked.ok) return checked.problems[0].says
  }
  if ((alternates?.length ?? 0) > MOST_ALTERNATES)
    return `It has ${alternates?.length} alternates; a cue keeps at most ${MOST_ALTERNATES}.`
  if ([gradeName ?? '', ...(alternates ?? []).map(({ name }) => name)].some(isLongName))
    return `A grade's name has at most ${GRADE_NAME_LIMIT} characters; shorten it.`
  if (framing && !isFramingWithin(framing)) return 'Its framing is past what a job holds.'
  if ((scene?.length ?? 0) > SCENE_LIMIT)
    return `Its scene mark has more than ${SCENE_LIMIT} characters; shorten it.`
  if ((note?.length ?? 0) > NOTE_LIMIT)
    return `Its note has more than ${NOTE_LIMIT} characters; shorten it.`
  return undefined
}

const isLongName = (name: string): boolean => name.length > GRADE_NAME_LIMIT

/** What of a decision's ramp a job does not hold, in words. */
export const misfitOfRamp = ({ ramp }: DecisionValues): string | undefined =>
  ramp !== undefined && !(Number.isInteger(ramp) && ramp >= 0 && ramp <= LONGEST_RAMP)
    ? `Its ramp is ${ramp} frames; a job holds 0 to ${LONGEST_RAMP}.`
    : undefined

/** What another list said as far as a job keeps it: one text a format, within `limit`. */
export const foreignWithin = (foreign: Foreign, limit: number): Foreign =>
  foreign.filter(
    ({ format, text }, index) =>
      text.length <= limit && foreign.findIndex((each) => each.format === format) === index,
  )

/** A problem for each decision that says more than a job keeps. */
export const foreignNotKept = (decisions: readonly Decision[]): readonly Problem[] =>
  decisions.flatMap((decision, index) =>
    foreignWithin(decision.foreign, CUE_FOREIGN_LIMIT).length === decision.foreign.length
      ? []
      : [
          problem(
            'too-large',
            `Decision ${index + 1} says more than a job keeps of another list; that is left out.`,
            decision.line === undefined ? undefined : { line: decision.line },
          ),
        ],
  )
