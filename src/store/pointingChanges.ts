import type { AppStore } from './appStore.ts'
import type { Pointing, ScanPoint } from './pointing.ts'

const set = (store: AppStore, change: Partial<Pointing>): void =>
  store.setState({ pointing: { ...store.getState().pointing, ...change } })

const isSame = (a: ScanPoint | undefined, b: ScanPoint | undefined): boolean =>
  a?.x === b?.x && a?.y === b?.y

/** Tells where the pointer is on the scan; undefined when it is not over it. */
export const pointOver = (store: AppStore, over: ScanPoint | undefined): void => {
  if (!isSame(over, store.getState().pointing.over)) set(store, { over })
}

/** Chooses the place that is read; undefined takes it away. */
export const readAt = (store: AppStore, reading: ScanPoint | undefined): void => {
  if (!isSame(reading, store.getState().pointing.reading)) set(store, { reading })
}

const inside = (part: number): number => Math.min(1, Math.max(0, part))

/** Moves the place that is read, by parts of the scan's width and height; it stops at the edges. */
export const moveReading = (store: AppStore, right: number, down: number): void => {
  const { reading } = store.getState().pointing
  if (reading) readAt(store, { x: inside(reading.x + right), y: inside(reading.y + down) })
}

/** Takes a picked place away, by its number from 0. */
export const dropPick = (store: AppStore, index: number): void =>
  set(store, { picks: store.getState().pointing.picks.toSpliced(index, 1) })
