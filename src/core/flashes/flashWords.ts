import { MOST_CHANGES } from './flashLimits.ts'
import type { FlashBreach, FlashReading, LongFlashing, StripeBreach } from './flashReport.ts'

const percent = (area: number): string => `${(area * 100).toFixed(2)} %`

const READINGS: Readonly<Record<FlashReading, string>> = {
  places: 'in the same places',
  picture: 'of the whole picture',
  both: 'in the same places and of the whole picture',
}

/** What a breach is called. */
export const FLASH_NAMES = { general: 'flashes', red: 'red flashes', stripes: 'stripes' } as const

/** What a breach is, in words without its frames. */
export const flashWords = (breach: FlashBreach | StripeBreach): string => {
  if (breach.kind === 'stripes')
    return `more than ${Math.ceil(breach.pairs) - 1} pairs of ${breach.isStill ? 'still' : 'moving or flashing'} stripes on ${percent(breach.area)} of the picture`
  const { changes, area, reading, isCautious } = breach
  const doubt = isCautious ? ', too many on the cautious reading only' : ''
  return `${changes} changes within a second ${READINGS[reading]} (${MOST_CHANGES} allowed), up to ${percent(area)} of it${doubt}`
}

/** What a long sequence is, in words without its frames. */
export const longWords = ({ kind, changes }: LongFlashing): string =>
  `${FLASH_NAMES[kind]} for more than 5 s within the limits, up to ${changes} changes within a second`

/** What the check goes by, and how fine it sees. */
export const FLASH_METHOD =
  'Flashes by ITU-R BT.1702-3 (SDR, white at 200 cd/m²) and WCAG 2.2, on the means of at most ' +
  '128 × 72 parts of the picture. Luminance is counted by BT.1886, by the display of the 2005 ' +
  'anchors and as relative luminance: the largest change counts. Red flashes count by either ' +
  'definition of WCAG and wherever saturated red comes or goes. Stripes (its guideline 2, as others ' +
  'report its numbers) are looked for five times a second; bars narrower than a part are not seen, ' +
  'and those narrower than two may be missed.'
