import { setHouseProfile } from '../../core/job/commands/setHouseProfile.ts'
import { LARGEST_LEVEL } from '../../core/job/limits.ts'
import {
  COMPOSITE_625,
  EBU_R103_V3,
  type Limits,
  type ToleranceProfile,
} from '../../core/tolerance/profile.ts'
import { perform } from '../../store/document.ts'
import { useApp } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { NumberField } from '../parts/NumberField.tsx'
import { TextField } from '../parts/TextField.tsx'
import { filterWords } from '../parts/words.ts'
import { FIGURES, type Figure, LimitsTable } from './LimitsTable.tsx'

/** Where limits start when a figure is first limited, and where they are reset to. */
const START: Readonly<Record<Figure, Limits>> = {
  rgb: EBU_R103_V3.luma,
  luma: EBU_R103_V3.luma,
  composite: COMPOSITE_625.composite,
}

/** The least the two limits of a figure are apart, in percent. */
const APART = 0.01

/** A house profile's name, numbers and source, each to be changed. */
export const HouseProfileFields = ({ profile }: { profile: ToleranceProfile }) => {
  const { store } = useApp()
  const { id } = profile
  const change = (edit: Partial<ToleranceProfile>, label: string, gesture?: string): boolean =>
    perform(
      store,
      (job) => setHouseProfile(job, id, (before) => ({ ...before, ...edit }), label),
      gesture,
    )
  return (
    <>
      <TextField
        label="Name"
        value={profile.name}
        onCommit={(name) => change({ name }, 'House profile name')}
      />
      <LimitsTable
        profile={profile}
        nameCell={(figure, name) =>
          figure === 'luma' ? (
            name
          ) : (
            <label>
              <input
                type="checkbox"
                checked={profile[figure] !== null}
                onChange={(event) =>
                  change(
                    { [figure]: event.currentTarget.checked ? START[figure] : null },
                    'House profile limits',
                  )
                }
              />{' '}
              {name}
            </label>
          )
        }
        limitCell={(figure, limits, end) => (
          <NumberField
            label={`${end === 0 ? 'lowest' : 'highest'} ${FIGURES.find((each) => each.id === figure)?.name}`}
            value={limits[end] * 100}
            owner={id}
            reset={START[figure][end] * 100}
            step={0.1}
            decimals={2}
            low={end === 0 ? -LARGEST_LEVEL * 100 : limits[0] * 100 + APART}
            high={end === 1 ? LARGEST_LEVEL * 100 : limits[1] * 100 - APART}
            unit=" %"
            onChange={(value, gesture) => {
              const level = value / 100
              const edited = end === 0 ? [level, limits[1]] : [limits[0], level]
              change({ [figure]: edited }, 'House profile limits', gesture)
            }}
          />
        )}
      />
      <div className="house-area">
        <span>area of a frame that may be out</span>
        <NumberField
          label="area that may be out"
          value={profile.area * 100}
          owner={id}
          reset={EBU_R103_V3.area * 100}
          step={0.1}
          decimals={2}
          low={0}
          high={100}
          unit=" %"
          onChange={(value, gesture) =>
            change({ area: value / 100 }, 'House profile area', gesture)
          }
        />
      </div>
      <Choice
        label="Levels and area are taken"
        options={[true, false].map((filtered) => ({
          id: String(filtered),
          label: filterWords(filtered),
        }))}
        value={String(profile.filtered)}
        onChange={(filtered) => change({ filtered: filtered === 'true' }, 'House profile filter')}
      />
      <TextField
        label="Source of its numbers"
        value={profile.source}
        onCommit={(source) => change({ source }, 'House profile source')}
      />
    </>
  )
}
