import type { ImportOptions, MatchBy } from '../../core/conform/importPlan.ts'
import type { DecisionList } from '../../core/formats/decisionList.ts'
import { changeImport } from '../../store/importing.ts'
import { useApp } from '../appContext.ts'
import { Radio } from '../parts/Radio.tsx'
import { Tick } from '../parts/Tick.tsx'
import { ImportStart } from './ImportStart.tsx'

const MATCHES: readonly { readonly id: MatchBy; readonly says: string }[] = [
  { id: 'timecode', says: 'timecode' },
  { id: 'name', says: 'name, of a cue or a source' },
  { id: 'order', says: 'order: first to first' },
]

const TIMES = [
  { id: 'record', says: 'record times: the programme' },
  { id: 'source', says: 'source times: the reel' },
] as const

export type ImportChoicesProps = {
  readonly list: DecisionList
  readonly options: ImportOptions
  /** The element that says why nothing can be imported. */
  readonly reasonId: string
}

/** How a list is laid over the reel, and what is taken from it. */
export const ImportChoices = ({ list, options, reasonId }: ImportChoicesProps) => {
  const { store } = useApp()
  const has = {
    record: list.decisions.some(({ recordSpan }) => recordSpan !== undefined),
    source: list.decisions.some(({ sourceSpan }) => sourceSpan !== undefined),
  }
  const hasTimes = has.record || has.source
  return (
    <div className="import-choices">
      <fieldset>
        <legend>Find the cue of a decision by its</legend>
        {MATCHES.map(({ id, says }) => (
          <Radio
            key={id}
            name="match-by"
            isChosen={options.matchBy === id}
            isDisabled={id === 'timecode' && !hasTimes}
            onChoose={() => changeImport(store, { matchBy: id })}
          >
            {says}
          </Radio>
        ))}
      </fieldset>
      <fieldset>
        <legend>Count by its</legend>
        {TIMES.map(({ id, says }) => (
          <Radio
            key={id}
            name="times"
            isChosen={options.times === id}
            isDisabled={!has[id]}
            onChoose={() => changeImport(store, { times: id })}
          >
            {says}
          </Radio>
        ))}
        {!hasTimes && <p className="dim">The list has no times.</p>}
      </fieldset>
      <ImportStart options={options} isDisabled={!hasTimes} reasonId={reasonId} />
      <fieldset>
        <legend>Take</legend>
        <Tick
          isTicked={options.takesPlaces}
          isDisabled={!hasTimes}
          onTick={(takesPlaces) => changeImport(store, { takesPlaces })}
        >
          places: where cues begin
        </Tick>
        <Tick
          isTicked={options.takesGrades}
          onTick={(takesGrades) => changeImport(store, { takesGrades })}
        >
          grades, framing, notes
        </Tick>
      </fieldset>
    </div>
  )
}
