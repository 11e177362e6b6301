import { at } from '../base/assert.ts'
import { chromaToCode, signalToCode } from '../colour/codeValues.ts'
import { rgbToYCbCr } from '../colour/yCbCr.ts'
import { type RgbPicture, rgbPicture } from '../picture/rgbPicture.ts'
import {
  type Delivered,
  type DeliveredForm,
  deliveredBytes,
  type Overlay,
} from './deliveredForm.ts'

/** The picture with an overlay over it. */
export const laidOver = (picture: RgbPicture, overlay: Overlay): RgbPicture => {
  const { width, height } = picture
  const out = rgbPicture(width, height)
  for (const plane of ['r', 'g', 'b'] as const) {
    out[plane].set(picture[plane])
    for (let y = 0; y < overlay.height; y++)
      for (let x = 0; x < overlay.width; x++) {
        const part = at(overlay.coverage, y * overlay.width + x) / 255
        const to = { x: overlay.left + x, y: overlay.top + y }
        if (to.x < 0 || to.y < 0 || to.x >= width || to.y >= height) continue
        out[plane][to.y * width + to.x] = overlay.ground + part * (overlay.ink - overlay.ground)
      }
  }
  return out
}

type Write = { readonly bytes: Uint8Array<ArrayBuffer>; readonly clipped: number }

const rgbCodes = (
  picture: RgbPicture,
  depth: 10 | 16,
  put: (i: number, codes: number[]) => void,
) => {
  const largest = 2 ** depth - 1
  let clipped = 0
  for (let i = 0; i < picture.r.length; i++) {
    let isPast = false
    const codes = [at(picture.r, i), at(picture.g, i), at(picture.b, i)].map((level) => {
      const code = Math.floor(level * largest + 0.5)
      const kept = code > 0 ? Math.min(code, largest) : 0
      isPast ||= kept !== code
      return kept
    })
    if (isPast) clipped++
    put(i, codes)
  }
  return clipped
}

const words10 = (picture: RgbPicture): Write => {
  const bytes = new Uint8Array(4 * picture.r.length)
  const view = new DataView(bytes.buffer)
  const clipped = rgbCodes(picture, 10, (i, [r = 0, g = 0, b = 0]) => {
    view.setUint32(4 * i, ((r << 22) | (g << 12) | (b << 2)) >>> 0)
  })
  return { bytes, clipped }
}

const rgb16 = (picture: RgbPicture, isLittleEndian: boolean): Write => {
  const bytes = new Uint8Array(6 * picture.r.length)
  const view = new DataView(bytes.buffer)
  const clipped = rgbCodes(picture, 16, (i, codes) => {
    for (const [c, code] of codes.entries()) view.setUint16(6 * i + 2 * c, code, isLittleEndian)
  })
  return { bytes, clipped }
}

/** Weights of the columns about a chroma sample sited left: 1, 2, 1 of four. */
const halveAcross = (plane: Float64Array, width: number, height: number): Float64Array => {
  const columns = (width + 1) >> 1
  const out = new Float64Array(columns * height)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < columns; x++) {
      const row = y * width
      const left = at(plane, row + Math.max(2 * x - 1, 0))
      const right = at(plane, row + Math.min(2 * x + 1, width - 1))
      out[y * columns + x] = (left + 2 * at(plane, row + 2 * x) + right) / 4
    }
  return out
}

/** The mean of each pair of lines: chroma sited between them. */
const halveDown = (plane: Float64Array, width: number, height: number): Float64Array => {
  const rows = (height + 1) >> 1
  const out = new Float64Array(width * rows)
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < width; x++) {
      const lower = Math.min(2 * y + 1, height - 1)
      out[y * width + x] = (at(plane, 2 * y * width + x) + at(plane, lower * width + x)) / 2
    }
  return out
}

const planes = (
  { width, height, r, g, b }: RgbPicture,
  { matrix, depth, layout }: Extract<DeliveredForm, { kind: 'planes' }>,
): Write => {
  const count = width * height
  const luma = new Float64Array(count)
  const differences = [new Float64Array(count), new Float64Array(count)] as const
  for (let i = 0; i < count; i++) {
    const [y, cb, cr] = rgbToYCbCr([at(r, i), at(g, i), at(b, i)], matrix)
    luma[i] = y
    differences[0][i] = cb
    differences[1][i] = cr
  }
  const chroma = differences.map((plane) => {
    const across = layout === '444' ? plane : halveAcross(plane, width, height)
    return layout === '420' ? halveDown(across, (width + 1) >> 1, height) : across
  })
  const bytes = new Uint8Array(
    deliveredBytes({ kind: 'planes', matrix, depth, layout }, width, height),
  )
  const view = new DataView(bytes.buffer)
  const size = depth > 8 ? 2 : 1
  let to = 0
  const put = (code: number): void => {
    if (size === 2) view.setUint16(to, code, true)
    else view.setUint8(to, code)
    to += size
  }
  const largest = 2 ** depth - 1
  const step = 2 ** (depth - 8)
  let clipped = 0
  for (const y of luma) {
    const exact = 16 * step + 219 * step * y
    if (exact < -0.5 || exact >= largest + 0.5) clipped++
    put(signalToCode(y, depth, 'narrow'))
  }
  for (const plane of chroma) for (const c of plane) put(chromaToCode(c, depth, 'narrow'))
  return { bytes, clipped }
}

/** A delivered picture laid out in bytes by the float64 reference. */
export const layDelivered = (
  picture: RgbPicture,
  form: DeliveredForm,
): Omit<Delivered, 'limited'> => {
  if (form.kind === 'words10') return words10(picture)
  if (form.kind === 'rgb16') return rgb16(picture, form.isLittleEndian)
  return planes(picture, form)
}
