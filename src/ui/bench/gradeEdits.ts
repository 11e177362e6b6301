import type { Grade } from '../../core/colour/grade.ts'
import { allOf, withAll, withChannel } from '../../core/colour/gradeViews.ts'

export type Stage = 'gain' | 'gamma' | 'lift'

/** A column of the grade table: the mean of a stage, or one of its channels. */
export type Column = 'all' | 0 | 1 | 2

export const stageValue = (grade: Grade, stage: Stage, column: Column): number =>
  column === 'all' ? allOf(grade[stage]) : grade[stage][column]

export const withStageValue = (
  grade: Grade,
  stage: Stage,
  column: Column,
  value: number,
): Grade => ({
  ...grade,
  [stage]:
    column === 'all' ? withAll(grade[stage], value) : withChannel(grade[stage], column, value),
})
