import type { Grade } from './grade.ts'
import { allOf, type Tint, tintOf, withAll, withChannel, withTint } from './gradeViews.ts'

/** The triples of a grade. */
export type GradeStage = 'gain' | 'gamma' | 'lift'

/** What of a triple is meant: its *all*, or one channel. */
export type GradeColumn = 'all' | 0 | 1 | 2

/** One number of a triple. */
export const stageValue = (grade: Grade, stage: GradeStage, column: GradeColumn): number =>
  column === 'all' ? allOf(grade[stage]) : grade[stage][column]

/** The grade with one number of a triple set; set as *all*, its tint is kept. */
export const withStageValue = (
  grade: Grade,
  stage: GradeStage,
  column: GradeColumn,
  value: number,
): Grade => ({
  ...grade,
  [stage]:
    column === 'all' ? withAll(grade[stage], value) : withChannel(grade[stage], column, value),
})

/** The grade with part of a triple's tint set, its *all* kept. */
export const withStageTint = (grade: Grade, stage: GradeStage, tint: Partial<Tint>): Grade => ({
  ...grade,
  [stage]: withTint(grade[stage], { ...tintOf(grade[stage]), ...tint }),
})
