import type { ProcessList } from '../../core/process/processList.ts'
import { processWords } from '../../core/process/processWords.ts'
import { useApp } from '../appContext.ts'

type Props = {
  readonly list: ProcessList | null
  readonly onTakeOut: () => void
}

/** The process list of a reel's base: what it is called and does, taking one in, taking it out. */
export const BaseList = ({ list, onTakeOut }: Props) => {
  const { services } = useApp()
  return (
    <>
      <h3>Base list</h3>
      {list ? (
        <p className="base-list">
          “{list.name}”: {processWords(list)}
        </p>
      ) : (
        <p className="base-list">none</p>
      )}
      <p className="dim">
        Steps from a process list (.clf), such as a scanner’s own table or a look for the whole
        reel. They come after all the rest of the base and before every grade.
      </p>
      <div className="button-row">
        <button type="button" className="button" onClick={() => void services.pickBaseList()}>
          {list ? 'Choose another list…' : 'Choose a list…'}
        </button>
        <button type="button" className="button" disabled={list === null} onClick={onTakeOut}>
          Take the list out
        </button>
      </div>
    </>
  )
}
