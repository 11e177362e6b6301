import type { ReconformPlan } from '../../core/conform/reconformPlan.ts'
import { Scroller } from '../parts/Scroller.tsx'
import { placeText } from './importWords.ts'

/** Cues that begin anew on another scan, and held frames that are not there any more. */
export const RescanNew = ({ plan }: { plan: ReconformPlan }) => {
  const { follows, reel, added, held, rows } = plan
  const [again, fresh] =
    follows === 'list'
      ? ['which the list has again', 'from elsewhere']
      : ['whose picture comes again', 'a new picture']
  const dropped = held.filter(({ frame }) => frame === undefined)
  const numbers = new Map(rows.map(({ cue, number }) => [cue, number]))
  if (added.length + dropped.length === 0)
    return <p className="dim">No cue begins anew, and no held frame is dropped.</p>
  return (
    <Scroller label="New and dropped">
      <ul className="left-cues">
        {added.map(({ first, again: cue }) => (
          <li key={first}>
            + {placeText(reel, first)}{' '}
            <span className="dim">{cue ? `as cue ${numbers.get(cue)}, ${again}` : fresh}</span>
          </li>
        ))}
        {dropped.map(({ held: { id, name, frame } }) => (
          <li key={id}>
            ▲ {name} <span className="dim">held at {placeText(reel, frame)}, dropped</span>
          </li>
        ))}
      </ul>
    </Scroller>
  )
}
