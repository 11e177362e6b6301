import type { Adjustment, Control, ReadingAim } from '../core/lineup/adjustment.ts'
import { LINE_UP_SHEETS, type LineUpSheet } from '../core/lineup/lineUpSheets.ts'
import type { AppStore } from './appStore.ts'

/** The line-up of a scanner while it is done: of this computer, not of a job. */
export type LiningUp = {
  /** The sheet it was begun from, by its id. */
  readonly sheet: string
  readonly adjustment: Adjustment
  /** How controls stand and what is read now, not written down yet; undefined: not said. */
  readonly settings: readonly (number | undefined)[]
  readonly values: readonly (number | undefined)[]
  /** Points in the film path that were cleaned. */
  readonly cleaned: readonly string[]
}

const begunWith = ({ id, controls, readings }: LineUpSheet): LiningUp => ({
  sheet: id,
  adjustment: { controls, readings, log: [] },
  settings: controls.map(() => undefined),
  values: readings.map(() => undefined),
  cleaned: [],
})

const [FIRST] = LINE_UP_SHEETS
if (!FIRST) throw new Error('Bug: there is no sheet to line up by')

export const INITIAL_LINING_UP: LiningUp = begunWith(FIRST)

const setLiningUp = (store: AppStore, change: Partial<LiningUp>): void =>
  store.setState(({ liningUp }) => ({ liningUp: { ...liningUp, ...change } }))

/** Begins anew from a sheet. */
export const beginSheet = (store: AppStore, id: string): void => {
  const sheet = LINE_UP_SHEETS.find((each) => each.id === id)
  const { cleaned } = store.getState().liningUp
  if (sheet) store.setState({ liningUp: { ...begunWith(sheet), cleaned } })
}

/** Goes on with an adjustment that was kept in a file, as its last entry has it. */
export const openAdjustment = (store: AppStore, adjustment: Adjustment): void => {
  const last = adjustment.log.at(-1)
  setLiningUp(store, {
    sheet: 'own',
    adjustment,
    settings: adjustment.controls.map((_, j) => last?.settings[j]),
    values: adjustment.readings.map(() => undefined),
  })
}

const replaced = <Item>(list: readonly Item[], at: number, item: Item): readonly Item[] =>
  list.map((each, index) => (index === at ? item : each))

const without = <Item>(list: readonly Item[], at: number): readonly Item[] =>
  list.filter((_, index) => index !== at)

/** Changes what a control is; nothing that was written down is changed by it. */
export const changeControl = (store: AppStore, at: number, change: Partial<Control>): void => {
  const { adjustment } = store.getState().liningUp
  const before = adjustment.controls[at]
  if (!before) return
  const controls = replaced(adjustment.controls, at, { ...before, ...change })
  setLiningUp(store, { adjustment: { ...adjustment, controls } })
}

/** The same of a reading. */
export const changeReading = (store: AppStore, at: number, change: Partial<ReadingAim>): void => {
  const { adjustment } = store.getState().liningUp
  const before = adjustment.readings[at]
  if (!before) return
  const readings = replaced(adjustment.readings, at, { ...before, ...change })
  setLiningUp(store, { adjustment: { ...adjustment, readings } })
}

/** One more control; as nothing is known of it, the log begins anew. */
export const addControl = (store: AppStore): void => {
  const { adjustment, settings } = store.getState().liningUp
  const name = `Control ${adjustment.controls.length + 1}`
  const controls = [...adjustment.controls, { id: name, name, unit: '', low: 0, high: 100 }]
  setLiningUp(store, {
    adjustment: { ...adjustment, controls, log: [] },
    settings: [...settings, undefined],
  })
}

export const addReading = (store: AppStore): void => {
  const { adjustment, values } = store.getState().liningUp
  const name = `Reading ${adjustment.readings.length + 1}`
  const readings = [...adjustment.readings, { id: name, name, unit: '', aim: 0, low: -1, high: 1 }]
  setLiningUp(store, {
    adjustment: { ...adjustment, readings, log: [] },
    values: [...values, undefined],
  })
}

/** Takes a control out, with what was written down of it; the last one stays. */
export const removeControl = (store: AppStore, at: number): void => {
  const { adjustment, settings } = store.getState().liningUp
  if (adjustment.controls.length < 2) return
  const log = adjustment.log.map((each) => ({ ...each, settings: without(each.settings, at) }))
  setLiningUp(store, {
    adjustment: { ...adjustment, controls: without(adjustment.controls, at), log },
    settings: without(settings, at),
  })
}

export const removeReading = (store: AppStore, at: number): void => {
  const { adjustment, values } = store.getState().liningUp
  if (adjustment.readings.length < 2) return
  const log = adjustment.log.map((each) => ({ ...each, values: without(each.values, at) }))
  setLiningUp(store, {
    adjustment: { ...adjustment, readings: without(adjustment.readings, at), log },
    values: without(values, at),
  })
}

export const sayIsSet = (store: AppStore, at: number, value: number | undefined): void =>
  setLiningUp(store, { settings: replaced(store.getState().liningUp.settings, at, value) })

export const sayIsRead = (store: AppStore, at: number, value: number | undefined): void =>
  setLiningUp(store, { values: replaced(store.getState().liningUp.values, at, value) })

/** Puts settings that were advised where it is said how controls stand. */
export const takeSettings = (store: AppStore, settings: readonly number[]): void => {
  const { adjustment } = store.getState().liningUp
  setLiningUp(store, { settings, values: adjustment.readings.map(() => undefined) })
}

/** Says that a point in the film path is clean, or that it is not. */
export const sayIsClean = (store: AppStore, point: string, isClean: boolean): void => {
  const others = store.getState().liningUp.cleaned.filter((each) => each !== point)
  setLiningUp(store, { cleaned: isClean ? [...others, point] : others })
}

/** What was cleaned is in the log now: the next entry is not about it. */
export const sayIsLogged = (store: AppStore): void => setLiningUp(store, { cleaned: [] })

/** Puts settings that were good before where it is said how controls stand, by their names. */
export const recallSettings = (
  store: AppStore,
  good: readonly { readonly name: string; readonly value: number }[],
): void => {
  const { adjustment, settings } = store.getState().liningUp
  const byName = new Map(good.map(({ name, value }) => [name, value]))
  setLiningUp(store, {
    settings: adjustment.controls.map(({ name }, j) => byName.get(name) ?? settings[j]),
    values: adjustment.readings.map(() => undefined),
  })
}

const areSaid = (numbers: readonly (number | undefined)[]): numbers is readonly number[] =>
  numbers.every((each) => each !== undefined)

/** Whether all is said that is to be written down. */
export const canWriteDown = ({ settings, values }: LiningUp): boolean =>
  areSaid(settings) && areSaid(values)

/** Writes down how all stands; what is read next is still to be said. */
export const writeDown = (store: AppStore): void => {
  const { adjustment, settings, values } = store.getState().liningUp
  if (!areSaid(settings) || !areSaid(values)) return
  const log = [...adjustment.log, { settings, values }]
  setLiningUp(store, {
    adjustment: { ...adjustment, log },
    values: values.map(() => undefined),
  })
}

/** Takes the last entry back, to be said again. */
export const takeLastBack = (store: AppStore): void => {
  const { adjustment } = store.getState().liningUp
  const last = adjustment.log.at(-1)
  if (!last) return
  setLiningUp(store, {
    adjustment: { ...adjustment, log: adjustment.log.slice(0, -1) },
    settings: last.settings,
    values: last.values,
  })
}
