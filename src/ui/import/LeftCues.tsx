import { cuesOf, reelOf } from '../../store/queries.ts'
import { useAppState } from '../appContext.ts'
import { rangesOf } from '../parts/numberRanges.ts'
import { Scroller } from '../parts/Scroller.tsx'
import { placeText } from './importWords.ts'

/** Ranges shown at once; the rest are counted. */
const SHOWN = 500

/** The cues that no decision of a list is about. */
export const LeftCues = ({ numbers }: { numbers: readonly number[] }) => {
  const reel = useAppState(reelOf)
  const cues = useAppState(cuesOf)
  if (!reel) return null
  if (numbers.length === 0) return <p className="dim">The list has a decision for every cue.</p>
  const ranges = rangesOf(numbers)
  return (
    <Scroller label="Cues left as they are">
      <p className="dim">No decision of the list is about these; they stay as they are.</p>
      <ul className="left-cues">
        {ranges.slice(0, SHOWN).map(([from, to]) => {
          const cue = cues[from - 1]
          return (
            <li key={from}>
              {from === to ? `cue ${from}` : `cues ${from} to ${to}`}
              {cue && <span className="dim"> {placeText(reel, cue.first)}</span>}
            </li>
          )
        })}
        {ranges.length > SHOWN && <li>and {ranges.length - SHOWN} more stretches</li>}
      </ul>
    </Scroller>
  )
}
