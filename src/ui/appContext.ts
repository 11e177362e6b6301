import { createContext, useContext } from 'react'
import { useStore } from 'zustand'
import type { AppStore } from '../store/appStore.ts'
import type { AppState } from '../store/state.ts'
import type { Services } from './services.ts'

export type App = { readonly store: AppStore; readonly services: Services }

export const AppContext = createContext<App | undefined>(undefined)

export const useApp = (): App => {
  const app = useContext(AppContext)
  if (!app) throw new Error('Bug: a component stands outside the AppContext')
  return app
}

/** A part of the state; the component draws again when that part changes. */
export const useAppState = <Part>(select: (state: AppState) => Part): Part =>
  useStore(useApp().store, select)
