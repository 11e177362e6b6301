import { at } from '../base/assert.ts'
import { chromaHeight, chromaWidth, type Planes, type Samples } from '../picture/planes.ts'
import type { DeliveredForm } from './deliveredForm.ts'

type Size = { readonly width: number; readonly height: number }

const rgbPlanes = (
  { width, height }: Size,
  depth: number,
  codesAt: (pixel: number) => readonly [number, number, number],
): Planes => {
  const count = width * height
  const samples = [new Uint16Array(count), new Uint16Array(count), new Uint16Array(count)] as const
  for (let i = 0; i < count; i++) {
    const codes = codesAt(i)
    for (const c of [0, 1, 2] as const) samples[c][i] = codes[c]
  }
  return { width, height, layout: 'rgb', depth, samples }
}

/** A picture that is laid out in bytes as planes of the codes it holds. */
export const planesOfDelivered = (
  bytes: Uint8Array<ArrayBuffer>,
  form: DeliveredForm,
  size: Size,
): Planes => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length)
  if (form.kind === 'words10')
    return rgbPlanes(size, 10, (i) => {
      const word = view.getUint32(4 * i)
      return [word >>> 22, (word >>> 12) & 1023, (word >>> 2) & 1023]
    })
  if (form.kind === 'rgb16')
    return rgbPlanes(size, 16, (i) => [
      view.getUint16(6 * i, form.isLittleEndian),
      view.getUint16(6 * i + 2, form.isLittleEndian),
      view.getUint16(6 * i + 4, form.isLittleEndian),
    ])
  const { depth, layout } = form
  const { width, height } = size
  const chroma = chromaWidth(layout, width) * chromaHeight(layout, height)
  const plane = (from: number, count: number): Samples => {
    if (depth === 8) return bytes.slice(from, from + count)
    const codes = new Uint16Array(count)
    for (let i = 0; i < count; i++) codes[i] = view.getUint16(2 * (from + i), true)
    return codes
  }
  const luma = width * height
  const samples = [plane(0, luma), plane(luma, chroma), plane(luma + chroma, chroma)] as const
  return { width, height, layout, depth, samples }
}

/** How far two pictures of one kind lie apart. */
export type PlanesDifference = {
  /** The largest difference of any code; Infinity where the pictures are not of one kind. */
  readonly most: number
  /** 10·log10(largest code² / mean squared difference) over all samples, in dB. */
  readonly psnr: number
}

export const planesDifference = (a: Planes, b: Planes): PlanesDifference => {
  const isAlike =
    a.width === b.width && a.height === b.height && a.layout === b.layout && a.depth === b.depth
  if (!isAlike) return { most: Infinity, psnr: 0 }
  let most = 0
  let squares = 0
  let count = 0
  for (const [plane, samples] of a.samples.entries()) {
    const other = b.samples[plane as 0 | 1 | 2]
    for (let i = 0; i < samples.length; i++) {
      const difference = Math.abs(at(samples, i) - at(other, i))
      if (difference > most) most = difference
      squares += difference * difference
    }
    count += samples.length
  }
  const largest = 2 ** a.depth - 1
  return { most, psnr: 10 * Math.log10((largest * largest * count) / squares) }
}
