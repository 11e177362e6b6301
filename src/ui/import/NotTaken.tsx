import { useRef } from 'react'
import type { Place, Problem } from '../../core/base/problem.ts'
import { Scroller } from '../parts/Scroller.tsx'
import { useWindow } from '../parts/useWindow.ts'

/** CSS pixels of one: room for two lines. */
const HEIGHT = 40

const heightOf = () => HEIGHT

const placeWords = ({ line, byte, field }: Place): string =>
  line !== undefined ? `line ${line}` : byte !== undefined ? `byte ${byte}` : (field ?? '')

/** Its sentence without the line, which stands beside it. */
const sentenceWords = ({ says, at }: Problem): string => {
  const rest = says.replace(/^Line (\d+)[,:] /u, (whole, line) =>
    Number(line) === at?.line ? '' : whole,
  )
  return rest.charAt(0).toUpperCase() + rest.slice(1)
}

export type NotTakenProps = { readonly problems: readonly Problem[] }

/** What a file says that is not taken, each with its line. */
export const NotTaken = ({ problems }: NotTakenProps) => {
  const scroller = useRef<HTMLElement>(null)
  const view = useWindow(scroller, problems, heightOf)
  if (problems.length === 0) return null
  return (
    <Scroller label="What is not taken" place={scroller} onScroll={view.onScroll}>
      <ul className="not-taken" style={{ paddingTop: view.before, paddingBottom: view.after }}>
        {problems.slice(view.from, view.to).map((each, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the list is what the reader gave, in its order
          <li key={view.from + i} style={{ height: HEIGHT }} title={each.says}>
            <span className="dim">{each.at ? placeWords(each.at) : ''}</span>
            <span>{sentenceWords(each)}</span>
          </li>
        ))}
      </ul>
    </Scroller>
  )
}
