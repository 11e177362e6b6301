import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { paceText } from '../parts/paceText.ts'

/** Above the ledger: finding shots, how far it is, and stepping through the doubtful ones. */
export const FindingBar = () => {
  const { services } = useApp()
  const finding = useAppState((state) => state.finding)
  if (!finding)
    return (
      <div className="finding-bar" role="toolbar" aria-label="Shots">
        <CommandButton id="find-shots" />
        <CommandButton id="next-doubtful" label="Next doubtful" />
        <CommandButton id="next-outside" label="Next outside" />
      </div>
    )
  return (
    <div className="finding-bar">
      <progress value={finding.done} max={finding.total} aria-label="Finding shots" />
      <span role="status">{paceText('Finding shots', finding)}</span>
      <button type="button" className="button" onClick={services.stopFinding}>
        Cancel
      </button>
    </div>
  )
}
