import type { Loss } from '../../core/formats/loss.ts'
import { CueStretches } from './CueStretches.tsx'

/** What is lost, subject by subject, with every cue it concerns. */
export const LossList = ({ losses }: { losses: readonly Loss[] }) => (
  <ul className="losses">
    {losses.map((loss) => (
      <li key={`${loss.subject} ${loss.says}`}>
        <b>{loss.subject}</b>
        {' – '}
        {loss.says} <span className="dim">{loss.done}</span>
        {loss.cues.length > 0 && <CueStretches subject={loss.subject} cues={loss.cues} />}
      </li>
    ))}
  </ul>
)
