import { LETTER_HEIGHT, LETTER_WIDTH, letterLine } from '../lettering/letters.ts'
import type { Frame } from '../time/frame.ts'
import { formatTimecode } from '../time/timecode.ts'
import type { Overlay } from '../transfer/deliveredForm.ts'
import type { PassPlan } from '../transfer/passPlan.ts'
import { acrossOf, timesHigh } from './greyPicture.ts'
import { innermostSafe } from './innermostSafe.ts'

/** Letters take this part of the height. */
const PART = 1 / 24

/** Levels that no tolerance is passed by: light grey on black. */
const INK = 0.75
const GROUND = 0

/** What is burnt into each frame of the reel where its settings ask for that: its timecode. */
export const burnInOf = (plan: PassPlan): ((frame: Frame) => Overlay | undefined) => {
  const { reel, settings, coding } = plan
  if (!settings.burnsTimecode) return () => undefined
  const { width, height } = reel.media
  const down = timesHigh(height * PART)
  const across = acrossOf(down, coding.pixelAspect ?? 1)
  const bottom = (1 + innermostSafe(reel.media.displayAspect).height) / 2
  const edge = { x: Math.round((LETTER_WIDTH * across) / 2), y: (LETTER_HEIGHT * down) >> 3 }
  return (frame) => {
    const text = formatTimecode(reel.startCount + frame, reel.rate, reel.isDropFrame)
    const letters = letterLine(text, across, down)
    const box = { width: letters.width + 2 * edge.x, height: letters.height + 2 * edge.y }
    const coverage = new Uint8Array(box.width * box.height)
    for (let y = 0; y < letters.height; y++)
      coverage.set(
        letters.coverage.subarray(y * letters.width, (y + 1) * letters.width),
        (y + edge.y) * box.width + edge.x,
      )
    return {
      left: Math.round((width - box.width) / 2),
      top: Math.round(bottom * height - box.height),
      ...box,
      coverage,
      ink: INK,
      ground: GROUND,
    }
  }
}
