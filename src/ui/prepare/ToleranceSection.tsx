import { addHouseProfile } from '../../core/job/commands/addHouseProfile.ts'
import { removeHouseProfile } from '../../core/job/commands/removeHouseProfile.ts'
import { setJobInfo } from '../../core/job/commands/setJobInfo.ts'
import { newProfileId } from '../../core/job/recordIds.ts'
import { profilesWith } from '../../core/tolerance/findProfile.ts'
import { perform } from '../../store/document.ts'
import { jobOf, profileOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { filterWords, formatArea } from '../parts/words.ts'
import { HouseProfileFields } from './HouseProfileFields.tsx'
import { LimitsTable } from './LimitsTable.tsx'

/** What the job is held to, what that says, and the job's own profiles. */
export const ToleranceSection = () => {
  const { store } = useApp()
  const job = useAppState(jobOf)
  if (!job) return null
  const { profiles } = job.info.job
  const profile = profileOf(job)
  const isHouse = profiles.includes(profile)
  return (
    <section aria-label="Tolerance">
      <h2>Tolerance</h2>
      <Choice
        label="Held to"
        options={profilesWith(profiles).map(({ id, name }) => ({ id, label: name }))}
        value={profile.id}
        onChange={(tolerance) =>
          perform(store, (j) => setJobInfo(j, (i) => ({ ...i, tolerance }), 'Tolerance'))
        }
      />
      {isHouse ? (
        <HouseProfileFields profile={profile} />
      ) : (
        <>
          <LimitsTable profile={profile} />
          <p>
            Levels and area are taken {filterWords(profile.filtered)}.{' '}
            {profile.area === 0
              ? 'No pixel may be out.'
              : `Up to ${formatArea(profile.area)} of a frame’s area may be out.`}
          </p>
          <p className="dim">{profile.source}.</p>
        </>
      )}
      <button
        type="button"
        className="button"
        onClick={() => perform(store, (j) => addHouseProfile(j, profile, newProfileId()))}
      >
        Make a house profile of it
      </button>
      {profiles.length > 0 && (
        <>
          <h3>House profiles of this job</h3>
          <ul>
            {profiles.map(({ id, name }) => (
              <li key={id}>
                {name}{' '}
                {id === profile.id ? (
                  <span className="dim">in force; to take it out choose another first</span>
                ) : (
                  <button
                    type="button"
                    className="link"
                    aria-label={`Take out ${name}`}
                    onClick={() => perform(store, (j) => removeHouseProfile(j, id))}
                  >
                    take out
                  </button>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}
