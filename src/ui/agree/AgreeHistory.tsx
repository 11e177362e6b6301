import { useEffect, useState } from 'react'
import { agreedRows } from '../../core/agreement/agreedRows.ts'
import { type SignatureStanding, signatureStands } from '../../core/agreement/signatureStands.ts'
import { valuesAt } from '../../core/job/valuesAt.ts'
import { middleFrame } from '../../store/agreeRows.ts'
import { cuesOf, currentCue, jobOf, previousCue, reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { GradedStill } from '../ledger/StillPair.tsx'
import { answerWords, SIGNATURE_WORDS } from './agreeWords.ts'

const PICTURE_WIDTH = 150

/** Everything that was said of the picture under the line, and what was changed since. */
export const AgreeHistory = () => {
  const cue = useAppState(currentCue)
  const job = useAppState(jobOf)
  const signatures = useSignatures()
  if (!cue || !job) return null
  const reel = job.reels[cue.reel]
  const row = reel && agreedRows(job, reel).find((each) => each.cue.id === cue.id)
  return (
    <section aria-label="What was said">
      <h2>What was said of it</h2>
      {cue.answers.length === 0 && <p className="dim">Nothing yet.</p>}
      {row && row.changes.length > 0 && <Changed changes={row.changes} />}
      <ol className="agree-history">
        {cue.answers.toReversed().map((answer, index) => (
          <li key={`${answer.at} ${answer.by} ${answer.says}`}>
            {answerWords(answer)}
            {answer.note !== '' && <p>“{answer.note}”</p>}
            {answer.marks.length > 0 && (
              <p className="dim">
                {answer.marks.length === 1 ? 'A line is' : `${answer.marks.length} lines are`} drawn
                on the picture.
              </p>
            )}
            {answer.pack !== null && (
              <p className="dim">
                {SIGNATURE_WORDS[signatures[cue.answers.length - 1 - index] ?? 'not signed']}
              </p>
            )}
          </li>
        ))}
      </ol>
    </section>
  )
}

/** How the answers of the cue under the line are signed, in their order. */
const useSignatures = (): readonly SignatureStanding[] => {
  const cue = useAppState(currentCue)
  const job = useAppState(jobOf)
  const [standings, setStandings] = useState<readonly SignatureStanding[]>([])
  useEffect(() => {
    let isGone = false
    setStandings([])
    if (cue && job)
      void Promise.all(cue.answers.map((answer) => signatureStands(job, cue.id, answer))).then(
        (found) => {
          if (!isGone) setStandings(found)
        },
      )
    return () => {
      isGone = true
    }
  }, [cue, job])
  return standings
}

/** What is otherwise now than when the last answer was given, in words and in two pictures. */
const Changed = ({ changes }: { readonly changes: readonly string[] }) => {
  const { store } = useApp()
  const cue = useAppState(currentCue)
  const aspect = useAppState((state) => reelOf(state)?.media.displayAspect ?? 4 / 3)
  const answer = cue?.answers.at(-1)
  if (!cue || !answer) return null
  const state = store.getState()
  const frame = middleFrame(state, cue)
  const now = valuesAt(cue, previousCue(cuesOf(state), cue), frame)
  return (
    <>
      <p>Changed since the last of it:</p>
      <ul>
        {changes.map((change) => (
          <li key={change}>{change}</li>
        ))}
      </ul>
      <div className="agree-then-now">
        <figure>
          <GradedStill frame={frame} aspect={aspect} width={PICTURE_WIDTH} {...answer.look} />
          <figcaption>then</figcaption>
        </figure>
        <figure>
          <GradedStill frame={frame} aspect={aspect} width={PICTURE_WIDTH} {...now} />
          <figcaption>now</figcaption>
        </figure>
      </div>
    </>
  )
}
