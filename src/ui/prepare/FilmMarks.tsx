import { useId, useState } from 'react'
import { ok } from '../../core/base/result.ts'
import {
  type FilmMark,
  MARK_KINDS,
  type Particulars,
  withMark,
  withoutMark,
} from '../../core/film/particulars.ts'
import type { Reel } from '../../core/job/job.ts'
import { FILM_WORDS } from '../../core/report/filmWords.ts'
import { formatFootage } from '../../core/time/footage.ts'
import { frame } from '../../core/time/frame.ts'
import { parsePosition } from '../../core/time/parsePosition.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { tellProblems } from '../../store/notices.ts'
import { setStep } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'

export type FilmMarksProps = {
  readonly reel: Reel
  readonly onEdit: (change: (before: Particulars) => Particulars, label: string) => boolean
}

/** What is on the film at some frame: sync marks, splices, damage, notes. */
export const FilmMarks = ({ reel, onEdit }: FilmMarksProps) => {
  const { store, services } = useApp()
  const id = useId()
  const here = useAppState(({ playhead }) => playhead)
  const [kind, setKind] = useState<FilmMark['kind']>('note')
  const [says, setSays] = useState('')
  const [where, setWhere] = useState('')
  const { marks } = reel.particulars
  const goTo = (at: number) => {
    setStep(store, 'rehearse')
    services.seek(frame(at))
  }
  const place = (at: number) =>
    `${formatTimecode(reel.startCount + at, reel.rate, reel.isDropFrame)}, ${formatFootage(at, reel.gauge)}`
  return (
    <>
      <h3>By frame</h3>
      {marks.length > 0 && (
        <ul className="film-marks">
          {marks.map((mark, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a mark is known by its place
            <li key={`${index} ${mark.frame}`}>
              <button type="button" className="link" onClick={() => goTo(mark.frame)}>
                {place(mark.frame)}
              </button>{' '}
              {FILM_WORDS.mark[mark.kind]}
              {mark.says && `: ${mark.says}`}{' '}
              <button
                type="button"
                className="link"
                aria-label={`Take the mark at ${place(mark.frame)} out`}
                onClick={() => onEdit((before) => withoutMark(before, index), 'Take a mark out')}
              >
                take out
              </button>
            </li>
          ))}
        </ul>
      )}
      <form
        className="inline-fields"
        onSubmit={(event) => {
          event.preventDefault()
          const at = where.trim() === '' ? ok(here) : parsePosition(where, reel, here)
          if (!at.ok) return tellProblems(store, at.problems)
          const mark = { frame: at.value, kind, says: says.trim() }
          if (!onEdit((before) => withMark(before, mark), 'Mark the film')) return
          setSays('')
          setWhere('')
        }}
      >
        <label htmlFor={id}>At</label>
        <input
          id={id}
          className="place"
          value={where}
          placeholder={place(here)}
          onChange={(event) => setWhere(event.currentTarget.value)}
          onKeyDown={(event) => event.stopPropagation()}
        />
        <select
          aria-label="What kind of mark"
          value={kind}
          onChange={(event) => setKind(event.currentTarget.value as FilmMark['kind'])}
        >
          {MARK_KINDS.map((each) => (
            <option key={each} value={each}>
              {FILM_WORDS.mark[each]}
            </option>
          ))}
        </select>
        <input
          aria-label="What is there"
          placeholder="what is there"
          className="says"
          value={says}
          onChange={(event) => setSays(event.currentTarget.value)}
          onKeyDown={(event) => event.stopPropagation()}
        />
        <button type="submit" className="button">
          Mark it
        </button>
      </form>
    </>
  )
}
