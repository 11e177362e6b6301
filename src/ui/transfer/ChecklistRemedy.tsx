import type { ChecklistItem } from '../../core/transfer/checklist.ts'
import type { ChecklistName } from '../../core/transfer/override.ts'
import { DOUBTFUL, NOT_AGREED, OUTSIDE, UNLOOKED } from '../../store/cueBits.ts'
import { nextCueWith } from '../../store/nextNeeding.ts'
import { settledFrame } from '../../store/queries.ts'
import { selectCue } from '../../store/selection.ts'
import { setStep } from '../../store/session.ts'
import { isPassAtWork } from '../../store/transferring.ts'
import { useApp, useAppState } from '../appContext.ts'
import { AgreementTick } from '../parts/AgreementTick.tsx'
import { paceText } from '../parts/paceText.ts'
import { LineUpField } from './LineUpField.tsx'

/** Cues a check is about, and the words of the button that goes to the next of them. */
const CUES: Readonly<Partial<Record<ChecklistName, readonly [bit: number, words: string]>>> = {
  looked: [UNLOOKED, 'Go to the next not looked at'],
  agreed: [NOT_AGREED, 'Go to the next not agreed'],
  tolerance: [OUTSIDE, 'Go to the next outside'],
  boundaries: [DOUBTFUL, 'Go to the next in doubt'],
}

/** Where a check is put right: a way to its cues, or the thing itself. */
export const ChecklistRemedy = ({
  item: { check, standing },
}: {
  readonly item: ChecklistItem
}) => {
  if (check === 'agreed')
    return (
      <>
        <AgreementTick />
        {standing === 'wrong' && <GoToCue check="agreed" />}
      </>
    )
  if (check === 'scan') return <ScanChecksum />
  if (check === 'line-up')
    return (
      <>
        <GoToLineUp />
        <LineUpField />
      </>
    )
  if (check === 'space') return <RoomAgain />
  if (standing === 'wrong') return <GoToCue check={check} />
  return standing === 'not known' && check === 'tolerance' ? <Measuring /> : null
}

const GoToCue = ({ check }: { readonly check: ChecklistName }) => {
  const { store, services } = useApp()
  const [bit, words] = CUES[check] ?? [0, '']
  const go = () => {
    const cue = nextCueWith(store.getState(), bit)
    if (!cue) return
    setStep(store, 'rehearse')
    selectCue(store, cue, 'only')
    services.seek(settledFrame(store.getState(), cue))
  }
  return (
    <button type="button" className="button" onClick={go}>
      {words}
    </button>
  )
}

const GoToLineUp = () => {
  const { store } = useApp()
  return (
    <button type="button" className="button" onClick={() => setStep(store, 'line-up')}>
      Line up the scanner
    </button>
  )
}

/** Cues are measured by themselves; this says what they wait for. */
const Measuring = () => {
  const isOpen = useAppState(({ media }) => media === 'ready')
  const isBusy = useAppState(
    ({ playback, finding, transferring }) =>
      playback.isPlaying || finding !== undefined || isPassAtWork(transferring),
  )
  if (!isOpen) return <span>They are measured once the scan is open.</span>
  return (
    <span>
      {isBusy
        ? 'They are measured once nothing plays and no other work reads the scan.'
        : 'They are being measured, one after another.'}
    </span>
  )
}

const ScanChecksum = () => {
  const { services } = useApp()
  const taking = useAppState(({ transferring }) => transferring.taking)
  const isOpen = useAppState(({ media }) => media === 'ready')
  if (taking)
    return (
      <span role="status">{paceText('Reading the scan', { ...taking, framesPerSecond: 0 })}</span>
    )
  return (
    <button
      type="button"
      className="button"
      disabled={!isOpen}
      onClick={() => void services.transfer.takeChecksum()}
    >
      Take the checksum of the scan
    </button>
  )
}

const RoomAgain = () => {
  const { services } = useApp()
  return (
    <button type="button" className="link" onClick={() => void services.transfer.look()}>
      look again
    </button>
  )
}
