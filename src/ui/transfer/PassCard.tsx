import { useState } from 'react'
import { type FindingStanding, passStanding } from '../../core/transfer/passRecord.ts'
import { passWaitsFor } from '../../store/transferFacts.ts'
import type { PassPhase, PassRun } from '../../store/transferring.ts'
import { useApp, useAppState } from '../appContext.ts'
import { paceText } from '../parts/paceText.ts'
import { HeldFrames } from './HeldFrames.tsx'
import { FINDING_SIGNS, FINDING_TITLES } from './transferWords.ts'

/** The pass itself: begun, watched, paused, stopped, gone on with. */
export const PassCard = () => {
  const { services } = useApp()
  const run = useAppState(({ transferring }) => transferring.run)
  const unfinished = useAppState(({ transferring }) => transferring.unfinished)
  const waiting = useAppState(passWaitsFor)
  return (
    <section aria-label="The pass">
      <h2>The pass</h2>
      {run ? (
        <Running run={run} />
      ) : (
        <>
          {unfinished && <Unfinished waiting={waiting} />}
          <div className="button-row">
            <button
              type="button"
              className="button primary"
              disabled={waiting !== '' || unfinished !== undefined}
              onClick={() => void services.transfer.start()}
            >
              Make the transfer
            </button>
          </div>
          {waiting !== '' && <p className="dim">{waiting}</p>}
          {waiting === '' && unfinished && (
            <p className="dim">Go on with the unfinished pass, or throw it away, first.</p>
          )}
          <Outcome />
        </>
      )}
    </section>
  )
}

/** What the last pass of this session came to, in a sentence. */
const Outcome = () => {
  const outcome = useAppState(({ transferring }) => transferring.outcome)
  if (!outcome) return null
  const { name, findings } = outcome
  const titlesOf = (wanted: FindingStanding): string =>
    findings
      .filter(({ standing }) => standing === wanted)
      .map(({ check }) => FINDING_TITLES[check])
      .join(', ')
  const standing = passStanding(findings)
  if (standing === 'right')
    return <p role="status">● {name} is made, read back, and found right.</p>
  return (
    <p role="status">
      {FINDING_SIGNS[standing]} {name} is made. {standing === 'wrong' ? 'Found wrong' : 'Not known'}
      : {titlesOf(standing)}. What was found stands below.
    </p>
  )
}

const PHASES: Readonly<Record<PassPhase, string>> = {
  writing: 'Writing',
  joining: 'Putting it together',
  checking: 'Reading it back',
}

const Running = ({ run }: { readonly run: PassRun }) => {
  const { services } = useApp()
  const { name, phase, progress, isPaused, heldFrames, doneBefore } = run
  const { transfer } = services
  return (
    <>
      <p>
        {name}
        {doneBefore > 0 && <span className="dim"> · {doneBefore} frames were there already</span>}
      </p>
      <progress value={progress.done} max={progress.total} aria-label={PHASES[phase]} />
      <p role="status">
        {isPaused
          ? `Paused at ${progress.done} of ${progress.total}`
          : paceText(PHASES[phase], progress)}
      </p>
      <div className="button-row">
        {phase === 'writing' && (
          <button
            type="button"
            className="button"
            onClick={isPaused ? transfer.unpause : transfer.pause}
          >
            {isPaused ? 'Go on' : 'Pause'}
          </button>
        )}
        <button type="button" className="button" onClick={transfer.stop}>
          Stop
        </button>
      </div>
      <p className="dim">
        It is made as the job was when it began; what is changed now is not in it.
      </p>
      {heldFrames.length > 0 && <HeldFrames frames={heldFrames} />}
    </>
  )
}

const Unfinished = ({ waiting }: { readonly waiting: string }) => {
  const { services } = useApp()
  const unfinished = useAppState(({ transferring }) => transferring.unfinished)
  const [isAsking, setIsAsking] = useState(false)
  if (!unfinished) return null
  const { name, begunAt, done, total, hindrance } = unfinished
  return (
    <div className="unfinished">
      <p>
        ◐ {name} was begun on {begunAt.slice(0, 10)} and is not finished: {done} of {total} frames
        are there.
      </p>
      {hindrance !== undefined && <p>{hindrance}</p>}
      <div className="button-row">
        <button
          type="button"
          className="button primary"
          disabled={hindrance !== undefined || waiting !== ''}
          onClick={() => void services.transfer.goOn()}
        >
          Go on with it
        </button>
        {isAsking ? (
          <>
            <span>Throw away what is done?</span>
            <button
              type="button"
              className="button"
              onClick={() => {
                setIsAsking(false)
                void services.transfer.discard()
              }}
            >
              Throw it away
            </button>
            <button type="button" className="button" onClick={() => setIsAsking(false)}>
              Keep it
            </button>
          </>
        ) : (
          <button type="button" className="button" onClick={() => setIsAsking(true)}>
            Throw it away…
          </button>
        )}
      </div>
    </div>
  )
}
