import { useMemo } from 'react'
import { HAND_OVER_FORMATS } from '../../core/formats/handOverFormats.ts'
import { cuesOf, jobOf } from '../../store/queries.ts'
import { standingOf } from '../../store/standing.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import type { HandOver as HandOverPart } from '../services.ts'

const cueCount = (count: number): string => `${count} ${count === 1 ? 'cue' : 'cues'}`

/** What a person who hands over should know, a sentence a line. */
const standingText = (state: AppState): string => {
  const { measured, outside, doubtful, notAgreed, changed } = standingOf(state)
  const cues = cuesOf(state).length
  return [
    `${cueCount(cues)}, ${outside} outside tolerance${measured < cues ? `, ${cues - measured} not measured yet` : ''}.`,
    ...(doubtful > 0 ? [`${cueCount(doubtful)} with a doubtful boundary.`] : []),
    notAgreed > 0 ? `${cueCount(notAgreed)} not agreed.` : 'All agreed.',
    ...(changed > 0 ? [`${cueCount(changed)} changed since agreed.`] : []),
  ].join('\n')
}

/** What leaves the program: files that others can read, and what each cannot carry. */
export const HandOver = () => {
  const { services } = useApp()
  const job = useAppState(jobOf)
  const standing = useAppState(standingText).split('\n')
  // biome-ignore lint/correctness/useExhaustiveDependencies: the files are made from the job
  const parts = useMemo(() => services.prepareHandOver(), [services, job])
  return (
    <main className="page" aria-label="Hand over">
      <section aria-label="How the reel stands" className="whole-width">
        <h2>How the reel stands</h2>
        <ul>
          {standing.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </section>
      {parts.map((part) => (
        <HandOverCard key={part.format} part={part} />
      ))}
      <section aria-label="The job itself">
        <h2>The job itself</h2>
        <p>
          The whole list in this program’s open format: plain JSON with a published schema. It
          carries everything and opens here again.
        </p>
        <button
          type="button"
          className="button primary"
          onClick={() => void services.saveJobFile()}
        >
          Save the job
        </button>
      </section>
    </main>
  )
}

const HandOverCard = ({ part }: { part: HandOverPart }) => {
  const { services } = useApp()
  const { title, what } = HAND_OVER_FORMATS[part.format]
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <p>{what}</p>
      <h3>What it cannot carry</h3>
      {part.losses.length === 0 ? (
        <p>Nothing of this job is lost.</p>
      ) : (
        <ul>
          {part.losses.map((loss) => (
            <li key={loss.subject}>
              {loss.says} {loss.done}
            </li>
          ))}
        </ul>
      )}
      <div className="button-row">
        {part.files.map((file) => (
          <button
            type="button"
            key={file.name}
            className="button primary"
            onClick={() => void services.saveHandOver(file)}
          >
            Save {file.name}
          </button>
        ))}
      </div>
    </section>
  )
}
