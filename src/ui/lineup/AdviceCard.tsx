import { useMemo } from 'react'
import type { Adjustment } from '../../core/lineup/adjustment.ts'
import { adviceWords } from '../../core/lineup/adviceWords.ts'
import { type Advice, solveAdjustment } from '../../core/lineup/solveAdjustment.ts'
import { canWriteDown, takeLastBack, takeSettings, writeDown } from '../../store/liningUp.ts'
import { useApp, useAppState } from '../appContext.ts'

/** The settings an advice asks for; undefined where it asks for none. */
const settingsOf = ({ log }: Adjustment, advice: Advice): readonly number[] | undefined => {
  if (advice.kind === 'set' || advice.kind === 'cannot') return advice.plan.settings
  if (advice.kind !== 'exercise') return undefined
  return log.at(-1)?.settings.map((value, j) => (j === advice.control ? advice.to : value))
}

/** What to do next, worked out from everything that was written down. */
export const AdviceCard = () => {
  const { store } = useApp()
  const { adjustment } = useAppState(({ liningUp }) => liningUp)
  const mayWrite = useAppState(({ liningUp }) => canWriteDown(liningUp))
  const advice = useMemo(
    () => (adjustment.log.length > 0 ? solveAdjustment(adjustment) : undefined),
    [adjustment],
  )
  const settings = advice?.ok ? settingsOf(adjustment, advice.value) : undefined
  const { length } = adjustment.log
  return (
    <section aria-label="What to do next">
      <h2>What to do next</h2>
      <div role="status" className="advice">
        {!advice && (
          <p>
            Say how every control is set and what every reading is, as all stands, and write it
            down. Then each control is moved once, by a little, and everything is read again; after
            that it is worked out how to set all of them at once.
          </p>
        )}
        {advice && !advice.ok && <p>▲ {advice.problems[0].says}</p>}
        {advice?.ok &&
          adviceWords(adjustment, advice.value).map((line) => (
            <p key={line} className={line.startsWith(' ') ? 'advice-item' : undefined}>
              {line.trim()}
            </p>
          ))}
      </div>
      <div className="button-row">
        <button
          type="button"
          className="button primary"
          disabled={!mayWrite}
          onClick={() => writeDown(store)}
        >
          Write this down
        </button>
        <button
          type="button"
          className="button"
          disabled={settings === undefined}
          onClick={() => settings && takeSettings(store, settings)}
        >
          It is set so now
        </button>
        <button
          type="button"
          className="button"
          disabled={length === 0}
          onClick={() => takeLastBack(store)}
        >
          Take the last entry back
        </button>
        <span className="dim">
          {length === 1 ? '1 entry is' : `${length} entries are`} written down.
        </span>
      </div>
    </section>
  )
}
