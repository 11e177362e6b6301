import { at } from '../core/base/assert.ts'
import { CHANNEL_INKS, type Ink } from './instrumentInks.ts'
import {
  type ChannelColumns,
  columnPixels,
  FIRST_LEVEL,
  LAST_LEVEL,
  LEVELS,
  type LevelColumns,
} from './levelCounts.ts'
import { brightnessBy, inkWords, inTable, screened, traceBitmap, wordOf } from './traceBitmap.ts'

/** Rows of a trace: the levels drawn at their place, the highest on top. */
const ROWS = LAST_LEVEL - FIRST_LEVEL + 1

/** This part of a column's pixels at one level is drawn as bright as can be. */
const FULL_PART = 1 / 24

const brightness = brightnessBy('root')

const WHITE: Ink = [255, 255, 255]
const words = new Map<Ink, Uint32Array>()

const wordsOf = (ink: Ink): Uint32Array => {
  const made = words.get(ink) ?? inkWords(ink)
  words.set(ink, made)
  return made
}

/** A waveform in one ink, a pixel for each column and level. */
export const paintLevels = (
  { counts, columns }: LevelColumns,
  ink: Ink = WHITE,
): OffscreenCanvas => {
  const bitmap = traceBitmap(columns, ROWS)
  const bright = brightness(columnPixels(counts) * FULL_PART)
  const inked = wordsOf(ink)
  const { words: painted, show } = bitmap
  for (let column = 0; column < columns; column++) {
    const top = column * LEVELS + LAST_LEVEL
    for (let row = 0; row < ROWS; row++) {
      const count = counts[top - row] as number
      if (count > 0)
        painted[row * columns + column] = inked[bright[inTable(count)] as number] as number
    }
  }
  return show()
}

/** Steps of brightness that the inks of an overlay are mixed in, as a power of 2. */
const STEP_BITS = 5
const STEPS = 1 << STEP_BITS
const DROPPED_BITS = 8 - STEP_BITS

/** The words of all mixtures of the three inks, by the brightness of red, green and blue. */
const mixtures = (): Uint32Array => {
  const made = new Uint32Array(STEPS ** 3)
  const part = (step: number) => step / (STEPS - 1)
  const through = (channel: 0 | 1 | 2, r: number, g: number, b: number): number =>
    screened(
      CHANNEL_INKS[0][channel] * part(r),
      CHANNEL_INKS[1][channel] * part(g),
      CHANNEL_INKS[2][channel] * part(b),
    )
  for (let r = 0; r < STEPS; r++)
    for (let g = 0; g < STEPS; g++)
      for (let b = 0; b < STEPS; b++)
        made[mixtureAt(r, g, b)] = wordOf(
          through(0, r, g, b),
          through(1, r, g, b),
          through(2, r, g, b),
        )
  // Nothing counted: clear.
  made[0] = 0
  return made
}

const mixtureAt = (r: number, g: number, b: number): number =>
  (r << (2 * STEP_BITS)) | (g << STEP_BITS) | b

let mixed: Uint32Array | undefined

/** Waveforms of R′, G′ and B′ over each other: where all three are, it is white. */
export const paintOverlay = ({ counts, columns }: ChannelColumns): OffscreenCanvas => {
  mixed ??= mixtures()
  const bitmap = traceBitmap(columns, ROWS)
  const [red, green, blue] = counts
  const bright = brightness(columnPixels(red) * FULL_PART)
  for (let column = 0; column < columns; column++)
    for (let row = 0; row < ROWS; row++) {
      const from = column * LEVELS + LAST_LEVEL - row
      const r = at(bright, inTable(at(red, from))) >> DROPPED_BITS
      const g = at(bright, inTable(at(green, from))) >> DROPPED_BITS
      const b = at(bright, inTable(at(blue, from))) >> DROPPED_BITS
      bitmap.words[row * columns + column] = at(mixed, mixtureAt(r, g, b))
    }
  return bitmap.show()
}
