import { FLASH_METHOD, FLASH_NAMES, flashWords, longWords } from '../../core/flashes/flashWords.ts'
import { cueIndexAt } from '../../core/job/cueList.ts'
import type { Frame } from '../../core/time/frame.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { FLASH_SIGNS } from '../parts/flashSigns.ts'
import { STRINGS } from '../strings.ts'
import type { FlashPlotProps } from './FlashPlot.tsx'

type RowProps = {
  readonly sign: string
  readonly name: string
  readonly words: string
  readonly span: { readonly first: Frame; readonly last: Frame }
}

/** What a report found, a row each, with buttons to go to the first frame and the last. */
export const FlashTable = ({ report, cues, reel, onGoTo }: FlashPlotProps) => {
  if (report.breaches.length + report.long.length === 0)
    return <p title={FLASH_METHOD}>{STRINGS.flashes.none}</p>
  const goTo = (at: Frame) => (
    <button type="button" className="link" onClick={() => onGoTo(at)}>
      {formatTimecode(reel.startCount + at, reel.rate, reel.isDropFrame)}
    </button>
  )
  const row = ({ sign, name, words, span: { first, last } }: RowProps) => (
    <tr key={`${sign} ${name} ${first}`}>
      <th scope="row">
        <span aria-hidden="true">{sign} </span>
        {name}
      </th>
      <td>{cueIndexAt(cues, first) + 1}</td>
      <td>{goTo(first)}</td>
      <td>{goTo(last)}</td>
      <td>{words}</td>
    </tr>
  )
  return (
    <table className="flash-table" title={FLASH_METHOD}>
      <thead>
        <tr>
          {STRINGS.flashes.columns.map((name) => (
            <th scope="col" key={name}>
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {report.breaches.map((breach) =>
          row({
            sign: FLASH_SIGNS[breach.kind],
            name: FLASH_NAMES[breach.kind],
            words: flashWords(breach),
            span: breach,
          }),
        )}
        {report.long.map((long) =>
          row({
            sign: FLASH_SIGNS.long,
            name: STRINGS.flashes.long,
            words: longWords(long),
            span: long,
          }),
        )}
      </tbody>
    </table>
  )
}
