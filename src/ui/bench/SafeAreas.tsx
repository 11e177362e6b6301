import { seenAt } from '../../core/framing/apertureFraming.ts'
import { frameBox, type Place, placeInBox } from '../../core/framing/frameBox.ts'
import { type SafeArea, safeAreas } from '../../core/framing/safeAreas.ts'
import { apertureFramingOf } from '../../store/apertureView.ts'
import { useAppState } from '../appContext.ts'
import type { Size } from '../parts/useElementSize.ts'
import { useFramingInForce } from './useFramingInForce.ts'

/** From a place of the delivered picture (−1…1 from the middle to its edges) to pixels. */
type Project = (place: Place) => Place

const useProject = (size: Size, aspect: number): Project => {
  const showsAperture = useAppState((state) => state.view.showsAperture)
  const zoom = useAppState((state) => apertureFramingOf(state).zoom)
  const framing = useFramingInForce()
  if (!showsAperture || !framing)
    return ([x, y]) => [((x + 1) / 2) * size.width, ((y + 1) / 2) * size.height]
  const box = frameBox(framing.inForce, aspect)
  return ([x, y]) => {
    const [across, down] = seenAt(zoom, aspect, placeInBox(box, x, y))
    return [across * size.width, down * size.height]
  }
}

/** The safe areas of the delivered picture, with a key to their lines: name and where it is from. */
export const SafeAreas = ({ size, aspect }: { size: Size; aspect: number }) => {
  const project = useProject(size, aspect)
  const isOnScan = useAppState((state) => state.view.showsAperture)
  const areas = safeAreas(aspect)
  return (
    <div className={`safe-areas${isOnScan ? ' is-on-scan' : ''}`}>
      <svg width={size.width} height={size.height} aria-hidden="true">
        {areas.map((area) => (
          <LineTwice key={area.name} line={area.line} points={pointsOf(area, project)} />
        ))}
      </svg>
      <ul aria-label="Safe areas">
        {areas.map(({ name, line, source, says }) => (
          <li key={name} title={says}>
            <svg width={34} height={10} aria-hidden="true">
              <LineTwice line={line} points="0,5 34,5" />
            </svg>
            {name}
            <span className="dim">{source}</span>
          </li>
        ))}
      </ul>
    </div>
  )
}

const pointsOf = ({ width, height }: SafeArea, project: Project): string =>
  (
    [
      [-width, -height],
      [width, -height],
      [width, height],
      [-width, height],
    ] as const
  )
    .map((corner) => project(corner).join())
    .join(' ')

/** Light on dark, so that it reads on any picture. */
const LineTwice = ({ line, points }: { line: SafeArea['line']; points: string }) => (
  <g className={`safe-area ${line}`}>
    <polygon className="under" points={points} />
    <polygon className="line" points={points} />
  </g>
)
