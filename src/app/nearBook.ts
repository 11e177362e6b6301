import type { Frame } from '../core/time/frame.ts'

type Entry<Value> = { readonly frame: Frame; readonly value: Value }

/** Values by frame, as many as there is room for, and which of them is nearest to a frame. */
export type NearBook<Value> = {
  /** The value of a frame, which then counts as lately used. */
  readonly get: (frame: Frame) => Value | undefined
  readonly put: (frame: Frame, value: Value) => void
  /** The nearest on either side for which `isFit` holds. */
  readonly nearest: (frame: Frame, isFit: (frame: Frame) => boolean) => Entry<Value> | undefined
  readonly clear: () => void
}

/** The place of the first frame not before `wanted`. */
const placeOf = (frames: readonly Frame[], wanted: Frame): number => {
  let low = 0
  let high = frames.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((frames[middle] ?? Infinity) < wanted) low = middle + 1
    else high = middle
  }
  return low
}

/** A book of at most `room` values: the one longest unused makes place. */
export const createNearBook = <Value>(room: number): NearBook<Value> => {
  const values = new Map<Frame, Value>()
  /** The same frames in order. */
  const frames: Frame[] = []
  const drop = (frame: Frame): void => {
    values.delete(frame)
    frames.splice(placeOf(frames, frame), 1)
  }
  return {
    get: (frame) => {
      const value = values.get(frame)
      if (value === undefined) return undefined
      values.delete(frame)
      values.set(frame, value)
      return value
    },
    put: (frame, value) => {
      if (!values.delete(frame)) frames.splice(placeOf(frames, frame), 0, frame)
      values.set(frame, value)
      const oldest = values.keys().next().value
      if (values.size > room && oldest !== undefined) drop(oldest)
    },
    nearest: (wanted, isFit) => {
      const place = placeOf(frames, wanted)
      const beside = [frames[place], frames[place - 1]]
        .filter((at) => at !== undefined)
        .filter(isFit)
        .sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))
      const [frame] = beside
      const value = frame === undefined ? undefined : values.get(frame)
      return frame === undefined || value === undefined ? undefined : { frame, value }
    },
    clear: () => {
      values.clear()
      frames.length = 0
    },
  }
}
