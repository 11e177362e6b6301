import { memo, useMemo, useRef } from 'react'
import type { ReconformPlan, ReconformRow } from '../../core/conform/reconformPlan.ts'
import { type RescanFilter, rescanRows } from '../../store/rescan.ts'
import { Scroller } from '../parts/Scroller.tsx'
import { useWindow } from '../parts/useWindow.ts'
import { placeText } from './importWords.ts'
import { Room } from './Room.tsx'
import { movedText, RECONFORM_WORDS, sureText } from './rescanWords.ts'
import { rowHeight } from './rowHeight.ts'

const heightOf = (row: ReconformRow): number => rowHeight(1, row.says)

export type RescanRowsProps = { readonly plan: ReconformPlan; readonly filter: RescanFilter }

/** Every cue of the reel and where its picture is on the new scan. */
export const RescanRows = ({ plan, filter }: RescanRowsProps) => {
  const scroller = useRef<HTMLElement>(null)
  const isByList = plan.follows === 'list'
  const rows = useMemo(() => rescanRows(plan, filter), [plan, filter])
  const view = useWindow(scroller, rows, heightOf)
  return (
    <Scroller label="Cues" place={scroller} onScroll={view.onScroll}>
      <table
        className={`import-table rescan-table${isByList ? ' is-by-list' : ''}`}
        aria-rowcount={rows.length + 1}
      >
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col">cue</th>
            <th scope="col">outcome</th>
            {isByList || <th scope="col">sure</th>}
            <th scope="col">was at</th>
            <th scope="col">is at</th>
            <th scope="col">remarks</th>
          </tr>
        </thead>
        <tbody>
          {view.before > 0 && <Room height={view.before} columns={isByList ? 5 : 6} />}
          {rows.slice(view.from, view.to).map((row, i) => (
            <Row key={row.number} row={row} index={view.from + i + 2} plan={plan} />
          ))}
          {view.after > 0 && <Room height={view.after} columns={isByList ? 5 : 6} />}
        </tbody>
      </table>
    </Scroller>
  )
}

type RowProps = { readonly row: ReconformRow; readonly index: number; readonly plan: ReconformPlan }

const Row = memo(({ row, index, plan: { follows, reel } }: RowProps) => {
  const isByList = follows === 'list'
  const { cue, first, outcome, frames, found, says } = row
  const words = RECONFORM_WORDS[outcome]
  return (
    <tr className={`is-${outcome}`} aria-rowindex={index} style={{ height: heightOf(row) }}>
      <th scope="row">{row.number}</th>
      <td className="outcome">
        <span aria-hidden="true" className="sign">
          {words.sign}
        </span>
        {words.word}
      </td>
      {isByList || <td>{sureText(row)}</td>}
      <td>{placeText(reel, cue.first)}</td>
      <td>
        {first === undefined ? '–' : placeText(reel, first)}
        <span className="dim">{movedText(row)}</span>
      </td>
      <td title={says}>
        {found} of {frames} frames {isByList ? 'in the list' : 'found'}
        {says !== '' && <span className="says">{says}</span>}
      </td>
    </tr>
  )
})
