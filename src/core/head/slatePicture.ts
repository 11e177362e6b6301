import { LETTER_HEIGHT, letterLine } from '../lettering/letters.ts'
import type { Planes } from '../picture/planes.ts'
import type { PassPlan } from '../transfer/passPlan.ts'
import {
  acrossOf,
  drawLettering,
  greyPicture,
  lettersAcross,
  planesOfGrey,
  timesHigh,
} from './greyPicture.ts'
import { innermostSafe } from './innermostSafe.ts'
import { slateLines } from './slateLines.ts'

/** Levels: dark grey ground, light grey words, names of what they are a little darker. */
const GROUND = 0.12
const WORDS = 0.75
const NAMES = 0.5

/** Height of a line in heights of its letters, and letters that the names of things take. */
const LEADING = 1.1
const NAME_LETTERS = 11

const HEADING = 'Graded transfer'

/** A text no longer than `most` letters, what is left out being in its middle. */
const shortened = (text: string, most: number): string => {
  const letters = [...text]
  if (letters.length <= most) return text
  const end = Math.floor((most - 1) / 2)
  return `${letters.slice(0, most - 1 - end).join('')}…${letters.slice(letters.length - end).join('')}`
}

type Line = readonly [what: string, value: string]

/** The first lines, and how many more there are, where not all have room. */
const fitting = (lines: readonly Line[], room: number): readonly Line[] =>
  lines.length <= room
    ? lines
    : [...lines.slice(0, room - 1), [`and ${lines.length - room + 1} more`, '']]

/** The particulars of a transfer to be read from the picture; in small pictures the first of them. */
export const slatePicture = (plan: PassPlan): Planes => {
  const { width, height } = plan.reel.media
  const pixelAspect = plan.coding.pixelAspect ?? 1
  const picture = greyPicture(width, height, pixelAspect, GROUND)
  const lines = [[HEADING, ''] as const, ...slateLines(plan)]
  const safe = innermostSafe(plan.reel.media.displayAspect)
  const room = { width: safe.width * width, height: safe.height * height }
  const down = timesHigh(room.height / (lines.length * LEADING))
  const lineHeight = LETTER_HEIGHT * LEADING * down
  const shown = fitting(lines, Math.floor(room.height / lineHeight))
  const across = acrossOf(down, pixelAspect)
  const most = lettersAcross(room.width, down, pixelAspect)
  const left = (width - room.width) / 2
  const top = (height - shown.length * lineHeight) / 2
  for (const [place, [name, value]] of shown.entries()) {
    const y = top + place * lineHeight
    const draw = (text: string, from: number, level: number): void => {
      if (most > from)
        drawLettering(
          picture,
          letterLine(shortened(text, most - from), across, down),
          left + letterLine(' '.repeat(from), across, down).width,
          y,
          level,
        )
    }
    if (value === '') draw(name, 0, WORDS)
    else {
      draw(name, 0, NAMES)
      draw(value, NAME_LETTERS, WORDS)
    }
  }
  return planesOfGrey(picture)
}
