import { memo } from 'react'
import type { Grade } from '../../core/colour/grade.ts'
import { GRADE_BOUNDS } from '../../core/colour/gradeBounds.ts'
import {
  type GradeColumn,
  type GradeStage,
  stageValue,
  withStageTint,
  withStageValue,
} from '../../core/colour/gradeColumns.ts'
import { tintOf } from '../../core/colour/gradeViews.ts'
import { changeGrade } from '../../store/grading.ts'
import { useApp } from '../appContext.ts'
import { NumberField } from '../parts/NumberField.tsx'

const STAGES: readonly { readonly stage: GradeStage; readonly reset: number }[] = [
  { stage: 'gain', reset: 1 },
  { stage: 'gamma', reset: 1 },
  { stage: 'lift', reset: 0 },
]

const COLUMNS: readonly { readonly column: GradeColumn; readonly name: string }[] = [
  { column: 'all', name: 'all' },
  { column: 0, name: 'R' },
  { column: 1, name: 'G' },
  { column: 2, name: 'B' },
]

const TINTS = [
  { axis: 'cb', name: 'Cb' },
  { axis: 'cr', name: 'Cr' },
] as const

/** What each row is most of, for those who think in the picture. */
const WHERE: Readonly<Record<GradeStage, string>> = {
  gain: 'peak white',
  gamma: 'middle',
  lift: 'black level',
}

/** What all numbers of a grade have. */
const SHARED = { step: 0.01, decimals: 3 } as const

type StageProps = {
  readonly owner: string
  readonly stage: GradeStage
  readonly column: GradeColumn
  readonly name: string
  readonly value: number
  readonly reset: number
}

/** Each number is drawn anew only when it changes itself: a drag changes few of them. */
const StageNumber = memo(({ owner, stage, column, name, value, reset }: StageProps) => {
  const { store } = useApp()
  const label = `${stage} ${name}`
  return (
    <NumberField
      {...SHARED}
      owner={owner}
      label={label}
      value={value}
      reset={reset}
      low={GRADE_BOUNDS[stage][0]}
      high={GRADE_BOUNDS[stage][1]}
      onChange={(wanted, gesture) =>
        changeGrade(
          store,
          label,
          (before) => withStageValue(before, stage, column, wanted),
          gesture,
        )
      }
    />
  )
})

type TintProps = {
  readonly owner: string
  readonly stage: GradeStage
  readonly axis: 'cb' | 'cr'
  readonly name: string
  readonly value: number
}

const TintNumber = memo(({ owner, stage, axis, name, value }: TintProps) => {
  const { store } = useApp()
  return (
    <NumberField
      {...SHARED}
      owner={owner}
      label={`${stage} tint ${name}`}
      value={value}
      reset={0}
      step={0.005}
      low={-0.5}
      high={0.5}
      onChange={(wanted, gesture) =>
        changeGrade(
          store,
          `${stage} tint`,
          (before) => withStageTint(before, stage, { [axis]: wanted }),
          gesture,
        )
      }
    />
  )
})

const SaturationNumber = memo(({ owner, value }: { owner: string; value: number }) => {
  const { store } = useApp()
  return (
    <NumberField
      {...SHARED}
      owner={owner}
      label="saturation"
      value={value}
      reset={1}
      low={GRADE_BOUNDS.saturation[0]}
      high={GRADE_BOUNDS.saturation[1]}
      onChange={(saturation, gesture) =>
        changeGrade(store, 'saturation', (before) => ({ ...before, saturation }), gesture)
      }
    />
  )
})

/** The cue's grade as numbers: each stage for all, each channel and as a tint; saturation. */
export const GradeTable = ({ grade, owner }: { grade: Grade; owner: string }) => (
  <table className="grade-table">
    <thead>
      <tr>
        <td />
        {COLUMNS.map(({ name }) => (
          <th key={name} scope="col" className={`channel-${name}`}>
            {name}
          </th>
        ))}
        {TINTS.map(({ name }) => (
          <th key={name} scope="col" title={`tint: ${name} of the three channels`}>
            {name}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {STAGES.map(({ stage, reset }) => (
        <tr key={stage}>
          <th scope="row" title={WHERE[stage]}>
            {stage}
          </th>
          {COLUMNS.map(({ column, name }) => (
            <td key={name}>
              <StageNumber
                owner={owner}
                stage={stage}
                column={column}
                name={name}
                value={stageValue(grade, stage, column)}
                reset={reset}
              />
            </td>
          ))}
          {TINTS.map(({ axis, name }) => (
            <td key={name} className="tint-number">
              <TintNumber
                owner={owner}
                stage={stage}
                axis={axis}
                name={name}
                value={tintOf(grade[stage])[axis]}
              />
            </td>
          ))}
        </tr>
      ))}
      <tr>
        <th scope="row">saturation</th>
        <td>
          <SaturationNumber owner={owner} value={grade.saturation} />
        </td>
      </tr>
    </tbody>
  </table>
)
