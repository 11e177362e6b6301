import { memo } from 'react'
import type { Agreement } from '../../core/agreement/agreementOf.ts'
import { isDoubtful } from '../../core/job/isDoubtful.ts'
import type { Cue, Reel } from '../../core/job/job.ts'
import { formatFootage } from '../../core/time/footage.ts'
import type { Frame } from '../../core/time/frame.ts'
import { secondsAt } from '../../core/time/rate.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import type { Verdict } from '../../core/tolerance/verdict.ts'
import type { LiveVerdict } from '../../store/state.ts'
import { FLASH_SIGNS } from '../parts/flashSigns.ts'
import { Mark } from '../parts/Mark.tsx'
import { formatNumber } from '../parts/numberText.ts'
import { liveWords, type VerdictWords, verdictWords } from '../parts/words.ts'
import { STRINGS } from '../strings.ts'
import { detailOf, type RowDetail } from './rowLayout.ts'
import { Strip } from './Strip.tsx'
import { TransferGlyph } from './TransferGlyph.tsx'

export type LedgerRowProps = {
  readonly cue: Cue
  readonly previous: Cue | undefined
  /** Its place among the reel's cues, from 0, and its row in the list. */
  readonly place: number
  readonly row: number
  readonly top: number
  readonly height: number
  readonly end: Frame
  readonly reel: Reel
  readonly slots: number
  readonly slotFrom: number
  readonly slotTo: number
  readonly verdict: Verdict | undefined
  /** What is known of its tolerance while there is no verdict. */
  readonly live: LiveVerdict | undefined
  /** Whether more flashes in it than is allowed. */
  readonly isFlashing: boolean
  readonly agreement: Agreement
  readonly isLooked: boolean
  readonly isCurrent: boolean
  readonly isSelected: boolean
  readonly isFirstOfScene: boolean
  readonly isLastOfScene: boolean
}

/** By which the grid says which row the line is on. */
export const rowId = ({ id }: Cue): string => `row-${id}`

/** One cue of the ledger: its stretch of the strip, and as many of its numbers as have room. */
export const LedgerRow = memo((props: LedgerRowProps) => {
  const { cue, row, top, height, end, reel, verdict, live, isCurrent, isSelected } = props
  const tolerance = verdict || !live ? verdictWords(verdict) : liveWords(live)
  const detail = detailOf(height)
  const states = `${isCurrent ? ' is-current' : ''}${isSelected ? ' is-selected' : ''}`
  return (
    <div
      role="row"
      id={rowId(cue)}
      data-cue={cue.id}
      aria-rowindex={row + 2}
      aria-selected={isSelected}
      aria-label={detail === 'thin' ? thinWords(props, tolerance) : undefined}
      className={`ledger-row is-${detail}${states}`}
      style={{ top, height }}
    >
      <div role="gridcell" className="strip" style={{ backgroundPositionY: -top }}>
        {height >= STILL_FROM && (
          <Strip
            cue={cue}
            previous={props.previous}
            end={end}
            aspect={reel.media.displayAspect}
            height={height}
            slots={props.slots}
            slotFrom={props.slotFrom}
            slotTo={props.slotTo}
          />
        )}
      </div>
      {cue.scene !== '' && height >= STILL_FROM && (
        <span
          className={`scene-bracket${props.isFirstOfScene ? ' is-first' : ''}${props.isLastOfScene ? ' is-last' : ''}`}
          aria-hidden="true"
        />
      )}
      {detail === 'thin' ? (
        height >= SIGN_FROM && (
          <div role="gridcell" className="thin-cell">
            {verdict?.isInside === false && <Mark {...tolerance} />}
            {props.isFlashing && <Mark sign={FLASH_SIGNS.general} word={STRINGS.flashes.over} />}
            {isDoubtful(cue) && <Mark sign="?" word="doubtful boundary" />}
          </div>
        )
      ) : (
        <Numbers {...props} tolerance={tolerance} detail={detail} />
      )}
    </div>
  )
})

/** Rows lower than this show no pictures, and lower than that no sign: they are lines of the film. */
const STILL_FROM = 8
const SIGN_FROM = 7

type Told = LedgerRowProps & { readonly tolerance: VerdictWords }

const timecodeOf = (reel: Reel, at: Frame): string =>
  formatTimecode(reel.startCount + at, reel.rate, reel.isDropFrame)

/** All that a row without room says to those who hear it. */
const thinWords = (
  { cue, agreement, place, reel, isFlashing }: LedgerRowProps,
  tolerance: VerdictWords,
): string =>
  `${place + 1} ${timecodeOf(reel, cue.first)} ${tolerance.word} ${isFlashing ? `${STRINGS.flashes.over} ` : ''}${STRINGS.agreement[agreement]}`

const Numbers = (props: Told & { readonly detail: Exclude<RowDetail, 'thin'> }) => {
  const { cue, agreement, place, reel, end, height, detail, verdict, tolerance, isLooked } = props
  const length = end - cue.first
  const isWhole = detail === 'whole'
  const isLine = detail === 'line'
  return (
    <>
      <div role="gridcell" className="cue-in">
        <b>{place + 1}</b>
        {isDoubtful(cue) && (
          <span className="doubt">
            {' '}
            {isLine ? <Mark sign="?" word="doubtful boundary" /> : '? doubtful'}
          </span>
        )}
        {!isLooked && (
          <span className="unlooked">
            {' '}
            <Mark sign="◦" word="not looked at" />
          </span>
        )}
        {isLine ? ' ' : <br />}
        {timecodeOf(reel, cue.first)}
        {isWhole && <span className="dim second-line">{formatFootage(cue.first, reel.gauge)}</span>}
        {cue.scene !== '' &&
          (isWhole ? (
            <span className="scene-word">scene {cue.scene}</span>
          ) : (
            <span className="unseen"> scene {cue.scene}</span>
          ))}
      </div>
      <div role="gridcell" className="cue-length">
        {formatNumber(secondsAt(length, reel.rate), 1)} s
        {!isLine && <span className="dim second-line">{length} fr</span>}
      </div>
      <div role="gridcell">
        {!isLine && <TransferGlyph grade={cue.grade} height={Math.min(50, height - 6)} />}
        {cue.alternates.length > 0 && (
          <AlternatesSign count={cue.alternates.length} isWhole={isWhole} />
        )}
      </div>
      <div role="gridcell">{formatNumber(cue.grade.saturation, 2)}</div>
      <div role="gridcell" className={`tolerance ${tolerance.word.replaceAll(' ', '-')}`}>
        <span aria-hidden="true">{tolerance.sign} </span>
        {tolerance.word}{' '}
        {props.isFlashing && <Mark sign={FLASH_SIGNS.general} word={STRINGS.flashes.over} />}
        {isWhole && <span className="dim">{verdict?.isInside ? '' : tolerance.detail}</span>}
      </div>
      <div role="gridcell" className="agreement">
        {STRINGS.agreement[agreement]}
        {cue.note !== '' && (
          <span className={isLine ? 'dim' : 'note'} title={cue.note}>
            {isLine ? ` ${cue.note}` : cue.note}
          </span>
        )}
      </div>
    </>
  )
}

const AlternatesSign = ({ count, isWhole }: { count: number; isWhole: boolean }) => {
  const words = `${count} ${count === 1 ? 'alternate' : 'alternates'}`
  return isWhole ? (
    <span className="alternates">{words}</span>
  ) : (
    <span className="unseen">{words}</span>
  )
}
