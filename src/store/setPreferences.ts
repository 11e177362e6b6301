import type { AppStore } from './appStore.ts'
import type { Preferences } from './preferences.ts'

export const setPreferences = (store: AppStore, change: Partial<Preferences>): void =>
  store.setState({ preferences: { ...store.getState().preferences, ...change } })

/** Keeps a hint from being shown again. */
export const putHintAway = (store: AppStore, id: string): void => {
  const { hintsSeen } = store.getState().preferences
  if (!hintsSeen.includes(id)) setPreferences(store, { hintsSeen: [...hintsSeen, id] })
}
