import type { ChartKind, Measured } from '../core/chart/measureChart.ts'
import { REGIONS_OF } from '../core/chart/measureChart.ts'
import type { Region } from '../core/chart/region.ts'
import type { AppStore } from './appStore.ts'

/** The picture of a chart, or the profile, that is measured at the line-up. */
export type Charting = {
  /** What is open, by its name; undefined: nothing. */
  readonly name: string | undefined
  /** The picture as it is shown; undefined for a profile. */
  readonly picture:
    | { readonly address: string; readonly width: number; readonly height: number }
    | undefined
  readonly kind: ChartKind
  /** The last that were marked out, as many as the kind is measured in. */
  readonly regions: readonly Region[]
  /** Time constants of the machine's correctors, as typed; empty: those that are found. */
  readonly correctors: string
  readonly measured: readonly Measured[]
}

export const INITIAL_CHARTING: Charting = {
  ...{ name: undefined, picture: undefined, kind: 'levels', regions: [], correctors: '' },
  measured: [],
}

export const setCharting = (store: AppStore, change: Partial<Charting>): void =>
  store.setState(({ charting }) => ({ charting: { ...charting, ...change } }))

/** What is to be measured is chosen anew: what was marked out stays as far as it serves. */
export const chooseKind = (store: AppStore, kind: ChartKind): void => {
  const { regions } = store.getState().charting
  setCharting(store, { kind, regions: regions.slice(-REGIONS_OF[kind]), measured: [] })
}

/** One more region is marked out; the first is given up where there are more than serve. */
export const markOut = (store: AppStore, region: Region): void => {
  const { regions, kind } = store.getState().charting
  setCharting(store, { regions: [...regions, region].slice(-REGIONS_OF[kind]), measured: [] })
}
