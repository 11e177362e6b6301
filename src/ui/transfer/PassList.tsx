import { useMemo } from 'react'
import { isPassRight, type PassFinding, type PassRecord } from '../../core/transfer/passRecord.ts'
import { TRANSFER_FORMAT_FACTS } from '../../core/transfer/transferSettings.ts'
import { jobOf } from '../../store/queries.ts'
import { passesOf } from '../../store/transferFacts.ts'
import { useApp, useAppState } from '../appContext.ts'
import { sizeText } from '../parts/sizeText.ts'
import { CHECKLIST_TITLES, FINDING_SIGNS, FINDING_TITLES } from './transferWords.ts'

/** The passes that were made of the reel, with what was found when they were read back. */
export const PassList = () => {
  const { store } = useApp()
  const passes = useAppState((state) => jobOf(state)?.passes)
  const reelId = useAppState((state) => state.reelId)
  // biome-ignore lint/correctness/useExhaustiveDependencies: these two decide the list
  const list = useMemo(() => passesOf(store.getState()), [store, passes, reelId])
  if (list.length === 0) return null
  return (
    <section aria-label="Passes made" className="whole-width">
      <h2>Passes made</h2>
      {list.map((pass, index) => (
        <details key={pass.id} open={index === 0} className="pass">
          <summary>
            <span aria-hidden="true">{isPassRight(pass) ? '●' : '▲'} </span>
            {pass.output.name} · {pass.endedAt.slice(0, 16).replace('T', ' ')} UTC ·{' '}
            {TRANSFER_FORMAT_FACTS[pass.settings.format].title} ·{' '}
            {isPassRight(pass) ? 'right' : 'something is wrong'}
          </summary>
          <Findings pass={pass} />
        </details>
      ))}
    </section>
  )
}

const Findings = ({ pass }: { readonly pass: PassRecord }) => {
  const { output, findings, overrides, heldFrames, madeWith } = pass
  return (
    <>
      <p className="dim">
        {output.frames} frames in {output.files} {output.files === 1 ? 'file' : 'files'},{' '}
        {sizeText(output.bytes)}; {madeWith}.
      </p>
      <ul className="findings">
        {findings.map((finding) => (
          <FindingLine key={finding.check} finding={finding} />
        ))}
      </ul>
      {heldFrames.length > 0 && (
        <p>Frames that show the one before: {heldFrames.slice(0, 40).join(', ')}.</p>
      )}
      {overrides.map(({ check, found, reason }) => (
        <p key={check}>
          {CHECKLIST_TITLES[check]}: {found} Made all the same: “{reason}”
        </p>
      ))}
    </>
  )
}

const FindingLine = ({ finding: { check, standing, says } }: { readonly finding: PassFinding }) => (
  <li className={`is-${standing.replace(' ', '-')}`}>
    <span aria-hidden="true" className="sign">
      {FINDING_SIGNS[standing]}
    </span>
    <span>
      <b>{FINDING_TITLES[check]}</b> <span className="dim">{standing}</span> {says}
    </span>
  </li>
)
