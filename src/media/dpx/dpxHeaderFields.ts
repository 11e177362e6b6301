import { viewOf } from '../readAt.ts'
import { DPX_UNDEFINED } from './dpxFields.ts'

/** Fields of a file in its own byte order. Those past the end of its header are not filled in. */
export type DpxFields = {
  readonly u8: (at: number) => number
  readonly u16: (at: number) => number
  readonly u32: (at: number) => number
  /** Undefined where it is not filled in or no number. */
  readonly float: (at: number) => number | undefined
}

/** @param end the first byte that is no part of the header */
export const dpxFieldsOf = (bytes: Uint8Array, end: number, isLittle: boolean): DpxFields => {
  const view = viewOf(bytes)
  const u32 = (at: number): number => (at + 4 <= end ? view.getUint32(at, isLittle) : DPX_UNDEFINED)
  return {
    u8: (at) => view.getUint8(at),
    u16: (at) => view.getUint16(at, isLittle),
    u32,
    float: (at) => {
      const value = u32(at) === DPX_UNDEFINED ? Number.NaN : view.getFloat32(at, isLittle)
      return Number.isFinite(value) ? value : undefined
    },
  }
}
