/**
 * How a delivered picture is laid out in bytes.
 *
 * 'words10': R′G′B′ as full-range 10-bit codes, a pixel a 32-bit word, R′ in the highest bits, the
 * two lowest zero (SMPTE ST 268-1 filling by method A), big-endian.
 * 'rgb16': R′G′B′ as full-range 16-bit codes, pixel by pixel.
 * 'planes': Y′, Cb, Cr as narrow-range codes by `matrix`, plane after plane; of 8 bits a byte each,
 * of 10 two, little-endian. Chroma of 420 is sited left and between lines, of 422 left: `Planes`.
 */
export type DeliveredForm =
  | { readonly kind: 'words10' }
  | { readonly kind: 'rgb16'; readonly isLittleEndian: boolean }
  | {
      readonly kind: 'planes'
      readonly matrix: 'bt601' | 'bt709' | 'bt2020'
      readonly depth: 8 | 10
      readonly layout: '420' | '422' | '444'
    }

/** Bytes of a picture of this size in a form. Chroma planes are ⌈w/2⌉ wide and ⌈h/2⌉ high. */
export const deliveredBytes = (form: DeliveredForm, width: number, height: number): number => {
  if (form.kind === 'words10') return 4 * width * height
  if (form.kind === 'rgb16') return 6 * width * height
  const columns = form.layout === '444' ? width : (width + 1) >> 1
  const rows = form.layout === '420' ? (height + 1) >> 1 : height
  return (form.depth > 8 ? 2 : 1) * (width * height + 2 * columns * rows)
}

/** Something grey laid over a delivered picture, as burnt-in timecode: an opaque rectangle. */
export type Overlay = {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
  /** How much each of its pixels shows of `ink` over `ground`, 0…255, row by row. */
  readonly coverage: Uint8Array
  /** Signal: 0 black, 1 peak. */
  readonly ink: number
  readonly ground: number
}

/** What a delivered picture is in bytes, and what was done to its levels on the way. */
export type Delivered = {
  readonly bytes: Uint8Array<ArrayBuffer>
  /**
   * Pixels with a level more than half a code past what the form's codes hold, clipped there: of
   * R′G′B′ forms one or more of the three, of 'planes' Y′ (colour differences are not counted).
   */
  readonly clipped: number
  /** Pixels of which the limiter moved R′, G′ or B′ by more than a quarter of a 10-bit code. */
  readonly limited: number
}
