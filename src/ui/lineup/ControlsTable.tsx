import { addControl, changeControl, removeControl, sayIsSet } from '../../store/liningUp.ts'
import { useApp, useAppState } from '../appContext.ts'
import { NumberCell } from '../parts/NumberCell.tsx'
import { WordCell } from './WordCell.tsx'

/** What can be set on the machine, its hard limits, and how it stands. */
export const ControlsTable = () => {
  const { store } = useApp()
  const { adjustment, settings } = useAppState(({ liningUp }) => liningUp)
  return (
    <section aria-label="Controls">
      <h2>Controls</h2>
      <div className="scroller">
        <table className="line-up-table">
          <thead>
            <tr>
              <th scope="col">name</th>
              <th scope="col">unit</th>
              <th scope="col">never below</th>
              <th scope="col">never above</th>
              <th scope="col">is set to</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {adjustment.controls.map(({ id, name, unit, low, high }, at) => {
              const limit = (which: 'low' | 'high') => (value: number | undefined) =>
                value !== undefined && changeControl(store, at, { [which]: value })
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: a control is known by its row
                <tr key={`${at} ${id}`}>
                  <td>
                    <WordCell
                      label={`Name of control ${at + 1}`}
                      value={name}
                      onCommit={(words) => changeControl(store, at, { name: words })}
                    />
                  </td>
                  <td>
                    <WordCell
                      label={`Unit of ${name}`}
                      value={unit}
                      onCommit={(words) => changeControl(store, at, { unit: words })}
                    />
                  </td>
                  <td>
                    <NumberCell
                      label={`${name}, never below`}
                      value={low}
                      onCommit={limit('low')}
                    />
                  </td>
                  <td>
                    <NumberCell
                      label={`${name}, never above`}
                      value={high}
                      onCommit={limit('high')}
                    />
                  </td>
                  <td>
                    <NumberCell
                      label={`${name} is set to`}
                      value={settings[at]}
                      onCommit={(value) => sayIsSet(store, at, value)}
                    />
                  </td>
                  <td>
                    <button
                      type="button"
                      className="link"
                      disabled={adjustment.controls.length < 2}
                      onClick={() => removeControl(store, at)}
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
      <button type="button" className="button" onClick={() => addControl(store)}>
        One more control
      </button>
    </section>
  )
}
