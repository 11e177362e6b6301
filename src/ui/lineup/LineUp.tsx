import {
  CLEANING_POINTS,
  LINE_UP_CAUTIONS,
  LINE_UP_SHEETS,
} from '../../core/lineup/lineUpSheets.ts'
import { beginSheet, sayIsClean } from '../../store/liningUp.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/TextField.tsx'
import { Tick } from '../parts/Tick.tsx'
import { AdviceCard } from './AdviceCard.tsx'
import { ChartCard } from './ChartCard.tsx'
import { ControlsTable } from './ControlsTable.tsx'
import { HistoryCard } from './HistoryCard.tsx'
import { LogCard } from './LogCard.tsx'
import { ReadingsTable } from './ReadingsTable.tsx'

const SHEETS = LINE_UP_SHEETS.map(({ id, title }) => ({ id, label: title }))

/** The scanner before the first cue: what is set, what is read, and how to bring it right at once. */
export const LineUp = () => (
  <main className="page line-up" aria-label="Line up">
    <div className="line-up-tables">
      <ControlsTable />
      <ReadingsTable />
      <ChartCard />
    </div>
    <div className="line-up-side">
      <AdviceCard />
      <CleaningCard />
      <LogCard />
      <HistoryCard />
      <SheetCard />
    </div>
  </main>
)

/** Points in the film path, ticked as they are cleaned; they go into the log. */
const CleaningCard = () => {
  const { store } = useApp()
  const cleaned = useAppState(({ liningUp }) => liningUp.cleaned)
  const others = cleaned.filter((point) => !CLEANING_POINTS.includes(point))
  return (
    <section aria-label="Cleaning">
      <h2>Cleaned in the film path</h2>
      <div className="cleaning">
        {[...CLEANING_POINTS, ...others].map((point) => (
          <Tick
            key={point}
            isTicked={cleaned.includes(point)}
            onTick={(isClean) => sayIsClean(store, point, isClean)}
          >
            {point}
          </Tick>
        ))}
      </div>
      <TextField
        label="Another point"
        value=""
        onCommit={(point) => {
          if (point.trim() !== '') sayIsClean(store, point.trim(), true)
          return false
        }}
      />
    </section>
  )
}

const SheetCard = () => {
  const { store } = useApp()
  const id = useAppState(({ liningUp }) => liningUp.sheet)
  const sheet = LINE_UP_SHEETS.find((each) => each.id === id)
  const kinds = sheet?.kind ? ([sheet.kind, 'any'] as const) : (['tube', 'sensor', 'any'] as const)
  return (
    <section aria-label="The scanner">
      <h2>The scanner</h2>
      <Choice
        label="Sheet (choosing one begins anew)"
        options={SHEETS}
        value={id}
        onChange={(chosen) => beginSheet(store, chosen)}
      />
      {sheet && <p className="dim">{sheet.source}</p>}
      <ul>
        {kinds.flatMap((kind) =>
          LINE_UP_CAUTIONS[kind].map((caution) => <li key={caution}>△ {caution}</li>),
        )}
      </ul>
    </section>
  )
}
