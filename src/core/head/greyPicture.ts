import { at } from '../base/assert.ts'
import { LETTER_HEIGHT, LETTER_WIDTH, type Lettering, letterLine } from '../lettering/letters.ts'
import type { Planes } from '../picture/planes.ts'

/** A grey picture that is drawn on: full-range codes of 16 bits. */
export type GreyPicture = {
  readonly width: number
  readonly height: number
  /** Width of a pixel over its height: letters are drawn as they are to be seen. */
  readonly pixelAspect: number
  readonly codes: Uint16Array
}

const LARGEST = 65_535

/** Signal (0 black, 1 peak) as a full-range 16-bit code. */
export const signalToCode16 = (signal: number): number => Math.round(signal * LARGEST)

export const greyPicture = (
  width: number,
  height: number,
  pixelAspect: number,
  ground: number,
): GreyPicture => ({
  width,
  height,
  pixelAspect,
  codes: new Uint16Array(width * height).fill(signalToCode16(ground)),
})

/** Fills a rectangle, as much of it as lies on the picture. */
export const fillRectangle = (
  { width, height, codes }: GreyPicture,
  place: { left: number; top: number; width: number; height: number },
  level: number,
): void => {
  const left = Math.max(0, Math.round(place.left))
  const right = Math.min(width, Math.round(place.left + place.width))
  const bottom = Math.min(height, Math.round(place.top + place.height))
  for (let y = Math.max(0, Math.round(place.top)); y < bottom; y++)
    if (right > left) codes.fill(signalToCode16(level), y * width + left, y * width + right)
}

/** How many pixels wide a pixel of a letter is that is `down` pixels high, to be seen square. */
export const acrossOf = (down: number, pixelAspect: number): number => down / pixelAspect

/** Draws letters with their top left corner at a place. */
export const drawLettering = (
  { width, height, codes }: GreyPicture,
  letters: Lettering,
  left: number,
  top: number,
  level: number,
): void => {
  const code = signalToCode16(level)
  for (let y = 0; y < letters.height; y++)
    for (let x = 0; x < letters.width; x++) {
      const to = { x: Math.round(left) + x, y: Math.round(top) + y }
      if (at(letters.coverage, y * letters.width + x) === 0) continue
      if (to.x >= 0 && to.x < width && to.y >= 0 && to.y < height) codes[to.y * width + to.x] = code
    }
}

/** A line of text with its middle at a place, its letters `down` times their own height. */
export const drawMiddle = (
  picture: GreyPicture,
  text: string,
  middle: { readonly x: number; readonly y: number },
  down: number,
  level: number,
): void => {
  const letters = letterLine(text, acrossOf(down, picture.pixelAspect), down)
  drawLettering(
    picture,
    letters,
    middle.x - letters.width / 2,
    middle.y - letters.height / 2,
    level,
  )
}

/** The most letters that fit into a width, and how many times their height fits into another. */
export const lettersAcross = (width: number, down: number, pixelAspect: number): number =>
  Math.floor(width / (LETTER_WIDTH * acrossOf(down, pixelAspect)))

export const timesHigh = (height: number): number => Math.max(1, Math.floor(height / LETTER_HEIGHT))

export const planesOfGrey = ({ width, height, codes }: GreyPicture): Planes => ({
  width,
  height,
  layout: 'rgb',
  depth: 16,
  samples: [codes, codes, codes],
})
