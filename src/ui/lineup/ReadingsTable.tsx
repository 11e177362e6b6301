import { addReading, changeReading, removeReading, sayIsRead } from '../../store/liningUp.ts'
import { useApp, useAppState } from '../appContext.ts'
import { NumberCell } from '../parts/NumberCell.tsx'
import { WordCell } from './WordCell.tsx'

/** A value beside its limits, as a sign and a word. */
const standing = (value: number | undefined, low: number, high: number): string => {
  if (value === undefined) return '– not read'
  if (value < low) return '▼ under'
  return value > high ? '▲ over' : '● inside'
}

/** What is read on the machine, where it is to be, and what it is now. */
export const ReadingsTable = () => {
  const { store } = useApp()
  const { adjustment, values } = useAppState(({ liningUp }) => liningUp)
  const last = adjustment.log.at(-1)
  return (
    <section aria-label="Readings">
      <h2>Readings</h2>
      <div className="scroller">
        <table className="line-up-table">
          <thead>
            <tr>
              <th scope="col">name</th>
              <th scope="col">unit</th>
              <th scope="col">from</th>
              <th scope="col">aim</th>
              <th scope="col">to</th>
              <th scope="col">is read as</th>
              <th scope="col">last written down</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {adjustment.readings.map(({ id, name, unit, aim, low, high }, at) => {
              const change = (which: 'low' | 'aim' | 'high') => (value: number | undefined) =>
                value !== undefined && changeReading(store, at, { [which]: value })
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: a reading is known by its row
                <tr key={`${at} ${id}`}>
                  <td>
                    <WordCell
                      label={`Name of reading ${at + 1}`}
                      value={name}
                      onCommit={(words) => changeReading(store, at, { name: words })}
                    />
                  </td>
                  <td>
                    <WordCell
                      label={`Unit of ${name}`}
                      value={unit}
                      onCommit={(words) => changeReading(store, at, { unit: words })}
                    />
                  </td>
                  <td>
                    <NumberCell label={`${name}, from`} value={low} onCommit={change('low')} />
                  </td>
                  <td>
                    <NumberCell label={`${name}, aim`} value={aim} onCommit={change('aim')} />
                  </td>
                  <td>
                    <NumberCell label={`${name}, to`} value={high} onCommit={change('high')} />
                  </td>
                  <td>
                    <NumberCell
                      label={`${name} is read as`}
                      value={values[at]}
                      onCommit={(value) => sayIsRead(store, at, value)}
                    />
                  </td>
                  <td className="label">{standing(last?.values[at], low, high)}</td>
                  <td>
                    <button
                      type="button"
                      className="link"
                      disabled={adjustment.readings.length < 2}
                      onClick={() => removeReading(store, at)}
                    >
                      take out<span className="unseen"> {name}</span>
                    </button>
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      <button type="button" className="button" onClick={() => addReading(store)}>
        One more reading
      </button>
    </section>
  )
}
