import { createStore, type StoreApi } from 'zustand/vanilla'
import { type AppState, INITIAL_STATE } from './state.ts'

export type AppStore = StoreApi<AppState>

/** The one store of the app. Its state is changed only by the functions in this folder. */
export const createAppStore = (): AppStore => createStore<AppState>(() => INITIAL_STATE)
