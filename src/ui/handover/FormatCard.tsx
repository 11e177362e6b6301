import { memo } from 'react'
import { HAND_OVER_FORMATS, type HandOverFormat } from '../../core/formats/handOverFormats.ts'
import { isFileACue, type PreparedFormat } from '../../core/formats/prepareFormat.ts'
import { cuesOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { LossList } from './LossList.tsx'

/** More files than this are saved as one .zip. */
const SAVED_ONE_BY_ONE = 6

export type FormatCardProps = {
  readonly format: HandOverFormat
  /** Undefined until it is known. */
  readonly part: PreparedFormat | undefined
}

/** One format: what it is, its files to be saved, and all that it loses. */
export const FormatCard = memo(({ format, part }: FormatCardProps) => {
  const { title, what } = HAND_OVER_FORMATS[format]
  return (
    <section aria-label={title} className="format-card">
      <h2>{title}</h2>
      <p>{what}</p>
      {part && part.problems.length === 0 && <Files part={part} />}
      {part?.problems.map(({ says }) => (
        <p key={says}>▲ It cannot be written: {says}</p>
      ))}
      <h3>What it cannot carry, and what was done</h3>
      {!part && <p className="dim">Looking…</p>}
      {part?.losses.length === 0 && <p>Nothing of this job is lost.</p>}
      {part && part.losses.length > 0 && <LossList losses={part.losses} />}
    </section>
  )
})

const Files = ({ part: { format, names } }: { part: PreparedFormat }) => {
  const { services } = useApp()
  const cues = useAppState((state) => cuesOf(state).length)
  const { handOver } = services
  const count = isFileACue(format) ? cues : names.length
  if (isFileACue(format) || count > SAVED_ONE_BY_ONE)
    return (
      <button type="button" className="button" onClick={() => void handOver.saveFormat(format)}>
        Save {count} .{HAND_OVER_FORMATS[format].extension} {count === 1 ? 'file' : 'files'} in one
        .zip
      </button>
    )
  return (
    <div className="button-row">
      {names.map((name) => (
        <button
          type="button"
          key={name}
          className="button"
          onClick={() => void handOver.saveFile(format, name)}
        >
          Save {name}
        </button>
      ))}
    </div>
  )
}
