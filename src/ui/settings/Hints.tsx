import { useEffect } from 'react'
import { putHintAway, setPreferences } from '../../store/setPreferences.ts'
import { useApp, useAppState } from '../appContext.ts'
import { keyLabel, keysOf } from '../commands/keys.ts'
import { IS_MAC } from '../parts/isMac.ts'
import { HINTS } from './hints.ts'

/** One hint at a time; it goes for good once put away, or once what it says was done. */
export const Hints = () => {
  const { store } = useApp()
  const preferences = useAppState((state) => state.preferences)
  const isReady = useAppState((state) => state.media === 'ready')
  const { hintsSeen, showsHints } = preferences
  const left = HINTS.filter(({ id }) => !hintsSeen.includes(id))
  const hasLeft = showsHints && left.length > 0
  useEffect(() => {
    if (!hasLeft) return
    return store.subscribe((state, before) => {
      for (const { id, isDone } of HINTS)
        if (!state.preferences.hintsSeen.includes(id) && isDone(state, before))
          putHintAway(store, id)
    })
  }, [store, hasLeft])
  if (!hasLeft || !isReady) return null
  const keyOf = (id: string) => {
    const key = keysOf(id, preferences)[0]
    return key && keyLabel(key, IS_MAC)
  }
  const hint = left.find(({ says }) => says(keyOf) !== undefined)
  if (!hint) return null
  return (
    <aside className="hint-line" aria-label="Hint">
      <span>{hint.says(keyOf)}</span>
      <span className="spacer" />
      <button type="button" className="button" onClick={() => putHintAway(store, hint.id)}>
        Got it
      </button>
      <button
        type="button"
        className="link"
        onClick={() => setPreferences(store, { showsHints: false })}
      >
        No more hints
      </button>
    </aside>
  )
}
