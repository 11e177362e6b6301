import { useMemo } from 'react'
import { CHECKLIST_TITLES } from '../../core/transfer/override.ts'
import { type PassFinding, type PassRecord, passStanding } from '../../core/transfer/passRecord.ts'
import { TRANSFER_FORMAT_FACTS } from '../../core/transfer/transferSettings.ts'
import { jobOf } from '../../store/queries.ts'
import { passesOf } from '../../store/transferFacts.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CopyButton } from '../parts/CopyButton.tsx'
import { sizeText } from '../parts/sizeText.ts'
import { HeldFrames } from './HeldFrames.tsx'
import { FINDING_SIGNS, FINDING_TITLES } from './transferWords.ts'

/** What the findings of a pass come to. */
const STANDINGS = {
  right: 'right',
  wrong: 'something is wrong',
  'not known': 'something is not known',
} as const

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
            <span aria-hidden="true">{FINDING_SIGNS[passStanding(pass.findings)]} </span>
            {pass.output.name} · {pass.endedAt.slice(0, 16).replace('T', ' ')} UTC ·{' '}
            {TRANSFER_FORMAT_FACTS[pass.settings.format].title} ·{' '}
            {STANDINGS[passStanding(pass.findings)]}
          </summary>
          <Findings pass={pass} />
        </details>
      ))}
    </section>
  )
}

const Findings = ({ pass }: { readonly pass: PassRecord }) => {
  const { output, findings, overrides, heldFrames, madeWith, decided } = pass
  const decidedNow = useAppState(({ transferring }) => transferring.decidedNow)
  const isOther = decidedNow !== undefined && decidedNow !== decided
  return (
    <>
      <p className="dim">
        {output.frames} frames in {output.files} {output.files === 1 ? 'file' : 'files'},{' '}
        {sizeText(output.bytes)}; {madeWith}.
      </p>
      {isOther && <p>◐ It was made from other values or settings than the job has now.</p>}
      <p>
        SHA-256 <code title={output.sha256}>{output.sha256.slice(0, 16)}…</code>{' '}
        <CopyButton text={output.sha256} what="The checksum" />
      </p>
      <ul className="findings">
        {findings.map((finding) => (
          <FindingLine key={finding.check} finding={finding} />
        ))}
      </ul>
      {heldFrames.length > 0 && <HeldFrames frames={heldFrames} />}
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
