import { memo } from 'react'
import { type Grade, gradeChannel } from '../../core/colour/grade.ts'

const WIDTH = 76
const HEIGHT = 50
const STEPS = 24
const LOW = -0.1
const HIGH = 1.1

const CHANNELS = ['r', 'g', 'b'] as const

const path = (grade: Grade, channel: 0 | 1 | 2): string => {
  const points: string[] = []
  for (let i = 0; i <= STEPS; i++) {
    const x = i / STEPS
    const y = gradeChannel(x, grade.lift[channel], grade.gamma[channel], grade.gain[channel])
    const shown = Math.min(HIGH, Math.max(LOW, y))
    const py = HEIGHT - ((shown - LOW) / (HIGH - LOW)) * HEIGHT
    points.push(`${(x * WIDTH).toFixed(1)} ${py.toFixed(1)}`)
  }
  return `M${points.join('L')}`
}

const level = (y: number): number => HEIGHT - ((y - LOW) / (HIGH - LOW)) * HEIGHT

export type TransferGlyphProps = { readonly grade: Grade; readonly height?: number }

/** A cue's three transfer curves, small: what comes out against what was scanned. */
export const TransferGlyph = memo(({ grade, height = HEIGHT }: TransferGlyphProps) => (
  <svg
    className="transfer-glyph"
    width={(WIDTH * height) / HEIGHT}
    height={height}
    viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
    aria-hidden="true"
  >
    <title>Transfer</title>
    <path className="guide" d={`M0 ${level(0)}H${WIDTH}M0 ${level(1)}H${WIDTH}`} />
    <path className="diagonal" d={`M0 ${level(0)}L${WIDTH} ${level(1)}`} />
    {CHANNELS.map((name, channel) => (
      <path key={name} className={`curve ${name}`} d={path(grade, channel as 0 | 1 | 2)} />
    ))}
  </svg>
))
