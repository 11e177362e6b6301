import { FORMATS_HANDED_OVER } from '../../core/formats/prepareFormat.ts'
import { cuesOf } from '../../store/queries.ts'
import { standingOf } from '../../store/standing.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { FormatCard } from './FormatCard.tsx'
import { FormatTable } from './FormatTable.tsx'
import { ReportCard } from './ReportCard.tsx'
import { usePrepared } from './usePrepared.ts'
import { WholeHandOver } from './WholeHandOver.tsx'

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

/** How the reel stands; drawn anew while cues are measured, and nothing else with it. */
const Standing = () => {
  const standing = useAppState(standingText).split('\n')
  return (
    <section aria-label="How the reel stands">
      <h2>How the reel stands</h2>
      <ul>
        {standing.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  )
}

/** What leaves the program: files that others can read, and what each cannot carry. */
export const HandOver = () => {
  const prepared = usePrepared()
  return (
    <main className="page hand-over" aria-label="Hand over">
      <Standing />
      <WholeHandOver />
      <ReportCard />
      <FormatTable prepared={prepared} />
      {FORMATS_HANDED_OVER.map((format) => (
        <FormatCard key={format} format={format} part={prepared.get(format)} />
      ))}
      <JobCard />
      <section aria-label="Lists that come back">
        <h2>Lists that come back</h2>
        <p>
          A list changed elsewhere is laid over the job to be looked at, decision by decision,
          before any of it is taken.
        </p>
        <CommandButton id="import-list" />
      </section>
    </main>
  )
}

const JobCard = () => {
  const { services } = useApp()
  return (
    <section aria-label="The job itself">
      <h2>The job itself</h2>
      <p>
        The whole list in this program’s open format: plain JSON with a published schema. It carries
        everything and opens here again.
      </p>
      <button type="button" className="button" onClick={() => void services.saveJobFile()}>
        Save the job
      </button>
    </section>
  )
}
