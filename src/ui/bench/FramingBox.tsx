import { seenAt } from '../../core/framing/apertureFraming.ts'
import { turnGripAt } from '../../core/framing/dragFrame.ts'
import {
  CORNERS,
  type Corner,
  frameBox,
  frameOutline,
  openOutline,
  type Place,
  placeInBox,
} from '../../core/framing/frameBox.ts'
import { isAtLimit } from '../../core/framing/framingLimit.ts'
import { type Framing, sameFraming } from '../../core/picture/framing.ts'
import { apertureFramingOf } from '../../store/apertureView.ts'
import { useAppState } from '../appContext.ts'
import { formatNumber } from '../parts/numberText.ts'
import type { Size } from '../parts/useElementSize.ts'
import { FramingGrip } from './FramingGrip.tsx'
import { FRAMING_UNITS } from './FramingNumber.tsx'
import { useFramingInForce } from './useFramingInForce.ts'

/** How far over the frame the turning handle stands, in pixels. */
const ARM = 26

const CORNER_NAMES: Readonly<Record<Corner, string>> = {
  'top-left': 'top left',
  'top-right': 'top right',
  'bottom-right': 'bottom right',
  'bottom-left': 'bottom left',
}

/** The delivered frame on the whole scan: dragged inside, by its corners, by the handle over it. */
export const FramingBox = ({ size, aspect }: { size: Size; aspect: number }) => {
  const isPicking = useAppState((state) => state.pointing.mode !== 'read')
  const zoom = useAppState((state) => apertureFramingOf(state).zoom)
  const framing = useFramingInForce()
  if (!framing) return null
  const pixelsPerHeight = zoom * size.height
  const toPixels = (place: Place): Place => {
    const [across, down] = seenAt(zoom, aspect, place)
    return [across * size.width, down * size.height]
  }
  const pathOf = (places: readonly Place[]) =>
    `M${places.map((place) => toPixels(place).join()).join('L')}Z`
  const { own, inForce } = framing
  const isInRamp = !sameFraming(own, inForce)
  const box = frameBox(own, aspect)
  const arm = ARM / pixelsPerHeight
  const grip = { aspect, arm, pixelsPerHeight }
  const [middle, top, turn] = [
    toPixels(box.middle),
    toPixels(placeInBox(box, 0, -1)),
    toPixels(turnGripAt(own, aspect, arm)),
  ]
  const scan = pathOf([
    [0, 0],
    [aspect, 0],
    [aspect, 1],
    [0, 1],
  ])
  return (
    <div className={`framing-box${isPicking ? ' is-picking' : ''}`}>
      <svg width={size.width} height={size.height} aria-hidden="true">
        <path className="scan-edge" d={scan} />
        <path
          className="blanked"
          d={pathOf(frameOutline(inForce, aspect)) + pathOf(openOutline(inForce, aspect))}
        />
        <path className="under" d={pathOf(frameOutline(inForce, aspect))} />
        <path className="line" d={pathOf(frameOutline(inForce, aspect))} />
        {isInRamp && (
          <>
            <path className="under" d={pathOf(frameOutline(own, aspect))} />
            <path className="line broken" d={pathOf(frameOutline(own, aspect))} />
          </>
        )}
        <path className="under" d={`M${top.join()}L${turn.join()}`} />
        <path className="line" d={`M${top.join()}L${turn.join()}`} />
        <path
          className="line"
          d={`M${middle[0] - 6},${middle[1]}h12M${middle[0]},${middle[1] - 6}v12`}
        />
      </svg>
      <p className="framing-says" aria-hidden="true">
        {(['zoom', 'pan', 'tilt', 'rotation'] as const).map((field) => (
          <span key={field}>
            {field} {wordsOf(own, field)}
          </span>
        ))}
      </p>
      <FramingGrip
        {...grip}
        grip="move"
        label="Delivered frame"
        hint="drag or arrow keys: pan and tilt (Shift coarse, Alt fine); Delete puts it in the middle"
        field="pan"
        value={own.pan}
        says={`${wordsOf(own, 'pan')}, ${wordsOf(own, 'tilt')}`}
        style={{
          left: middle[0],
          top: middle[1],
          width: box.width * pixelsPerHeight,
          height: box.height * pixelsPerHeight,
          transform: `translate(-50%, -50%) rotate(${-own.rotation}deg)`,
        }}
      />
      {(Object.keys(CORNERS) as Corner[]).map((corner) => {
        const [x, y] = toPixels(placeInBox(box, ...CORNERS[corner]))
        return (
          <FramingGrip
            {...grip}
            key={corner}
            grip={corner}
            label={`Corner of the frame, ${CORNER_NAMES[corner]}`}
            hint="drag or arrow keys: zoom, about the opposite corner (with Ctrl or ⌘ about the middle; Shift coarse, Alt fine); Delete shows all of the height"
            field="zoom"
            value={own.zoom}
            says={wordsOf(own, 'zoom')}
            style={{ left: x, top: y, rotate: `${-own.rotation}deg` }}
          />
        )
      })}
      <FramingGrip
        {...grip}
        grip="turn"
        label="Turn the frame"
        hint="drag or arrow keys: rotation (Shift coarse, Alt fine); Delete sets it upright"
        field="rotation"
        value={own.rotation}
        says={wordsOf(own, 'rotation')}
        style={{ left: turn[0], top: turn[1] }}
      />
    </div>
  )
}

/** A number of a framing with its unit, and that it can go no further where it cannot. */
const wordsOf = (
  framing: Framing,
  field: Exclude<keyof Framing, 'blanking' | 'squeeze'>,
): string => {
  const { unit, factor, decimals } = FRAMING_UNITS[field]
  const says = formatNumber(framing[field] * factor, decimals) + unit
  return isAtLimit(field, framing[field]) ? `${says} (at its limit)` : says
}
