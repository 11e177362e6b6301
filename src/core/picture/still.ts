/** A small copy of a frame: interleaved R′G′B′ as 10-bit narrow-range codes, 0…1023. */
export type Still = {
  readonly width: number
  readonly height: number
  readonly rgb: Uint16Array
}
