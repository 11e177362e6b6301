import { filmCautions } from '../../core/film/filmCautions.ts'
import type { Degree, Particulars } from '../../core/film/particulars.ts'
import { speedWords } from '../../core/film/runningTimes.ts'
import { setParticulars } from '../../core/job/commands/setParticulars.ts'
import type { Reel } from '../../core/job/job.ts'
import { FILM_WORDS } from '../../core/report/filmWords.ts'
import { parseRate } from '../../core/time/parseRate.ts'
import { perform } from '../../store/document.ts'
import { tellProblems } from '../../store/notices.ts'
import { useApp } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { NumberCell } from '../parts/NumberCell.tsx'
import { TextField } from '../parts/TextField.tsx'
import { FilmMarks } from './FilmMarks.tsx'
import { ShrinkageField } from './ShrinkageField.tsx'

const options = (words: Readonly<Record<string, string>>) =>
  Object.entries(words).map(([id, label]) => ({ id, label }))

const CONDITION: readonly {
  readonly key: 'vinegar' | 'perforations' | 'fading' | 'mould'
  readonly label: string
}[] = [
  { key: 'vinegar', label: 'Vinegar' },
  { key: 'perforations', label: 'Perforation damage' },
  { key: 'fading', label: 'Fading' },
  { key: 'mould', label: 'Mould' },
]

const NUMBERS: readonly {
  readonly key: 'splices' | 'soundAhead' | 'aspect'
  readonly label: string
}[] = [
  { key: 'splices', label: 'Splices' },
  { key: 'soundAhead', label: 'Sound ahead of picture, frames' },
  { key: 'aspect', label: 'Picture, width over height' },
]

const WORDS: readonly {
  readonly key: 'leader' | 'edgeNumbers' | 'notes'
  readonly label: string
}[] = [
  { key: 'leader', label: 'Leader' },
  { key: 'edgeNumbers', label: 'Edge numbers' },
  { key: 'notes', label: 'Notes' },
]

/** What is in the can: kept in the job, told in the reports; nothing of it decides a picture. */
export const FilmSection = ({ reel }: { readonly reel: Reel }) => {
  const { store, services } = useApp()
  const film = reel.particulars
  const edit = (change: (before: Particulars) => Particulars, label: string): boolean =>
    perform(store, (job) => setParticulars(job, reel.id, change, label))
  const choose = <Key extends keyof Particulars>(key: Key, label: string) => (
    <Choice
      key={key}
      label={label}
      options={options(FILM_WORDS[key as keyof typeof FILM_WORDS] ?? FILM_WORDS.degree)}
      value={film[key] as string}
      onChange={(value) => edit((before) => ({ ...before, [key]: value as Degree }), label)}
    />
  )
  return (
    <section aria-label="The film" className="film-section">
      <h2>The film</h2>
      {filmCautions(film).map((words) => (
        <p key={words}>▲ {words}</p>
      ))}
      <div className="film-fields">
        {choose('element', 'Element')}
        {choose('colouring', 'Colour')}
        {choose('support', 'Film base')}
        {choose('sound', 'Sound')}
        {CONDITION.map(({ key, label }) => choose(key, label))}
        {NUMBERS.map(({ key, label }) => (
          <div key={key} className="field">
            <span className="dim" aria-hidden="true">
              {label}
            </span>
            <NumberCell
              label={label}
              value={film[key] ?? undefined}
              onCommit={(value) => edit((before) => ({ ...before, [key]: value ?? null }), label)}
            />
          </div>
        ))}
        <TextField
          label="Made for, frames a second"
          value={film.speed ? speedWords(film.speed) : ''}
          onCommit={(text) => {
            const speed = text.trim() === '' ? undefined : parseRate(text)
            if (speed === undefined || speed.ok)
              return edit(
                (before) => ({ ...before, speed: speed?.value ?? null }),
                'Speed the film was made for',
              )
            tellProblems(store, speed.problems)
            return false
          }}
        />
      </div>
      <ShrinkageField
        gauge={reel.gauge}
        value={film.shrinkage}
        onTake={(shrinkage) => edit((before) => ({ ...before, shrinkage }), 'Shrinkage')}
      />
      {WORDS.map(({ key, label }) => (
        <TextField
          key={key}
          label={label}
          value={film[key]}
          onCommit={(text) => edit((before) => ({ ...before, [key]: text }), label)}
        />
      ))}
      <FilmMarks reel={reel} onEdit={edit} />
      <div className="button-row">
        <button type="button" className="button" onClick={() => void services.saveInspection()}>
          Save the inspection report
        </button>
      </div>
    </section>
  )
}
