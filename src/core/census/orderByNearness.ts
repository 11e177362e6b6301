import { at } from '../base/assert.ts'

const CHANNEL_BITS = 10
const DIGIT_BITS = 10
const DIGITS = 3

/** The ten bits of a number, two zeros after each. */
const spread = (value: number): number => {
  let bits = value
  bits = (bits | (bits << 16)) & 0x030000ff
  bits = (bits | (bits << 8)) & 0x0300f00f
  bits = (bits | (bits << 4)) & 0x030c30c3
  return (bits | (bits << 2)) & 0x09249249
}

/**
 * An order of colours (three numbers each) in which near ones lie near: along a curve that fills
 * the cube of all of them, their bits interlaced (Morton, "A computer oriented geodetic data base",
 * 1966). Sorted by digits.
 */
export const orderByNearness = (colours: Float32Array): Uint32Array => {
  const count = colours.length / 3
  const low = [Infinity, Infinity, Infinity]
  const high = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i < colours.length; i++) {
    const value = at(colours, i)
    const c = i % 3
    if (value < at(low, c)) low[c] = value
    if (value > at(high, c)) high[c] = value
  }
  // One scale for all channels, so that a cell is a cube.
  const widest = Math.max(1e-9, ...low.map((least, c) => at(high, c) - least))
  const scale = (2 ** CHANNEL_BITS - 1) / widest
  let places = new Uint32Array(count)
  let order = Uint32Array.from({ length: count }, (_, i) => i)
  for (let i = 0; i < count; i++) {
    const [r, g, b] = [0, 1, 2].map((c) =>
      spread(Math.floor((at(colours, i * 3 + c) - at(low, c)) * scale)),
    ) as [number, number, number]
    places[i] = (g << 2) | (r << 1) | b
  }
  for (let digit = 0; digit < DIGITS; digit++) {
    const shift = digit * DIGIT_BITS
    const starts = new Uint32Array(2 ** DIGIT_BITS + 1)
    const mask = 2 ** DIGIT_BITS - 1
    for (const place of places) {
      const digitOver = ((place >>> shift) & mask) + 1
      starts[digitOver] = at(starts, digitOver) + 1
    }
    for (let i = 1; i < starts.length; i++) starts[i] = at(starts, i) + at(starts, i - 1)
    const nextPlaces = new Uint32Array(count)
    const nextOrder = new Uint32Array(count)
    for (let i = 0; i < count; i++) {
      const place = at(places, i)
      const own = (place >>> shift) & mask
      const to = at(starts, own)
      starts[own] = to + 1
      nextPlaces[to] = place
      nextOrder[to] = at(order, i)
    }
    places = nextPlaces
    order = nextOrder
  }
  return order
}
