import { frameOutline, openOutline, type Place } from '../../core/framing/frameBox.ts'
import { sketchBounds } from '../../core/framing/sketchBounds.ts'
import { type Framing, sameFraming } from '../../core/picture/framing.ts'

const WIDTH = 168
const HEIGHT = 132
const MARGIN = 6

const points = (places: readonly Place[]): string => places.map((place) => place.join()).join(' ')

export type FramingSketchProps = {
  readonly own: Framing
  readonly inForce: Framing
  readonly aspect: number
}

/**
 * Where the delivered frame lies on the scan, small enough that both are wholly seen: what is in
 * force at the line, and with a broken line what a ramp leads to.
 */
export const FramingSketch = ({ own, inForce, aspect }: FramingSketchProps) => {
  const { x, y, width, height } = sketchBounds([own, inForce], aspect)
  const scale = Math.min((WIDTH - 2 * MARGIN) / width, (HEIGHT - 2 * MARGIN) / height)
  const left = WIDTH / 2 - (x + width / 2) * scale
  const top = HEIGHT / 2 - (y + height / 2) * scale
  const isInRamp = !sameFraming(own, inForce)
  return (
    <svg className="framing-sketch" width={WIDTH} height={HEIGHT} aria-hidden="true">
      <g transform={`translate(${left} ${top}) scale(${scale})`}>
        <rect className="scanned" width={aspect} height={1} />
        <polygon className="frame" points={points(frameOutline(inForce, aspect))} />
        <polygon className="open" points={points(openOutline(inForce, aspect))} />
        {isInRamp && <polygon className="own" points={points(openOutline(own, aspect))} />}
      </g>
    </svg>
  )
}
