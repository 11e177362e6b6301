import { memo, type PointerEvent } from 'react'
import type { Cue, Reel } from '../../core/job/job.ts'
import { formatFootage } from '../../core/time/footage.ts'
import type { Frame } from '../../core/time/frame.ts'
import { secondsAt } from '../../core/time/rate.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import type { Verdict } from '../../core/tolerance/verdict.ts'
import { isDoubtful } from '../../store/queries.ts'
import type { LiveVerdict } from '../../store/state.ts'
import { Mark } from '../parts/Mark.tsx'
import { formatNumber } from '../parts/numberText.ts'
import { liveWords, verdictWords } from '../parts/words.ts'
import { STRINGS } from '../strings.ts'
import { ROW_HEIGHT } from './rowLayout.ts'
import { StillPair } from './StillPair.tsx'
import { TransferGlyph } from './TransferGlyph.tsx'

export type LedgerRowProps = {
  readonly cue: Cue
  readonly index: number
  readonly end: Frame
  readonly reel: Reel
  readonly verdict: Verdict | undefined
  /** What is known of its tolerance while there is no verdict. */
  readonly live: LiveVerdict | undefined
  readonly isCurrent: boolean
  readonly isSelected: boolean
  readonly onPick: (cue: Cue, event: PointerEvent) => void
}

/** The frame a cue is shown by: a third of the way in, past any ramp. */
const stillFrame = (cue: Cue, end: Frame): Frame => {
  const settled = Math.min(cue.first + cue.ramp, end - 1)
  return Math.floor(settled + (end - settled) / 3) as Frame
}

/** One cue of the ledger: its pictures on the strip, and its numbers. */
export const LedgerRow = memo((props: LedgerRowProps) => {
  const { cue, index, end, reel, verdict, live, isCurrent, isSelected, onPick } = props
  const tolerance = verdict || !live ? verdictWords(verdict) : liveWords(live)
  const length = end - cue.first
  return (
    <div
      role="row"
      id={`row-${cue.id}`}
      aria-rowindex={index + 2}
      aria-selected={isSelected}
      className={`ledger-row${isCurrent ? ' is-current' : ''}${isSelected ? ' is-selected' : ''}`}
      style={{ transform: `translateY(${index * ROW_HEIGHT}px)`, height: ROW_HEIGHT }}
      onPointerDown={(event) => onPick(cue, event)}
    >
      <div role="gridcell" className="strip">
        <span className="perforations" aria-hidden="true" />
        <StillPair cue={cue} frame={stillFrame(cue, end)} aspect={reel.media.displayAspect} />
        {cue.ramp > 0 && (
          <span className="ramp-sign" title={`ramp over ${cue.ramp} frames`} aria-hidden="true">
            ◢ {cue.ramp}
          </span>
        )}
      </div>
      <div role="gridcell" className="cue-in">
        <b>{index + 1}</b>
        {isDoubtful(cue) && <span className="doubt"> ? doubtful</span>}
        <br />
        {formatTimecode(reel.startCount + cue.first, reel.rate, reel.isDropFrame)}
        <br />
        <span className="dim">{formatFootage(cue.first, reel.gauge)}</span>
      </div>
      <div role="gridcell">
        {formatNumber(secondsAt(length, reel.rate), 1)} s<br />
        <span className="dim">{length} fr</span>
      </div>
      <div role="gridcell">
        <TransferGlyph grade={cue.grade} />
      </div>
      <div role="gridcell">{formatNumber(cue.grade.saturation, 2)}</div>
      <div role="gridcell" className={`tolerance ${tolerance.word.replaceAll(' ', '-')}`}>
        <Mark sign={tolerance.sign} word={tolerance.word} />{' '}
        <span className="dim">{verdict?.isInside ? '' : tolerance.detail}</span>
      </div>
      <div role="gridcell" className="agreement">
        {STRINGS.agreement[cue.agreement]}
        <br />
        <span className="note">{cue.note}</span>
      </div>
    </div>
  )
})
