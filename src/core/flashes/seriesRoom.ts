import type { FlashSeries } from './flashReport.ts'

/** One frame's numbers of a series. */
export type SeriesPoint = { readonly [Name in keyof FlashSeries]: number }

const NAMES = ['up', 'down', 'redUp', 'redDown', 'changes', 'redChanges'] as const

const roomFor = (frames: number) => ({
  up: new Float32Array(frames),
  down: new Float32Array(frames),
  redUp: new Float32Array(frames),
  redDown: new Float32Array(frames),
  changes: new Uint8Array(frames),
  redChanges: new Uint8Array(frames),
})

/** A series that grows by a frame at a time. */
export const createSeriesRoom = () => {
  let room = roomFor(256)
  let frames = 0
  return {
    add: (point: SeriesPoint): void => {
      if (frames === room.up.length) {
        const larger = roomFor(frames * 2)
        for (const name of NAMES) larger[name].set(room[name])
        room = larger
      }
      for (const name of NAMES) room[name][frames] = Math.min(point[name], 255)
      frames++
    },
    frames: (): number => frames,
    /** A copy of what was added. */
    series: (): FlashSeries => ({
      up: room.up.slice(0, frames),
      down: room.down.slice(0, frames),
      redUp: room.redUp.slice(0, frames),
      redDown: room.redDown.slice(0, frames),
      changes: room.changes.slice(0, frames),
      redChanges: room.redChanges.slice(0, frames),
    }),
  }
}
