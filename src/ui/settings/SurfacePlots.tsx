import type { StickName } from '../../core/surface/padControls.ts'
import {
  type Deflection,
  type Response,
  responseCurve,
  stickResponse,
} from '../../core/surface/stickResponse.ts'
import { useAppState } from '../appContext.ts'
import { formatNumber } from '../parts/numberText.ts'

const MIDDLE: Deflection = { x: 0, y: 0 }

const placeWords = ({ x, y }: Deflection): string =>
  `${formatNumber(x, 2)} across, ${formatNumber(y, 2)} up`

type StickPlotProps = { readonly stick: StickName; readonly uses: string }

/** A stick as it stands (ring), the dead zone about its middle, and what it gives (dot). */
const StickPlot = ({ stick, uses }: StickPlotProps) => {
  const response = useAppState(({ preferences }) => preferences.surface.response)
  const at = useAppState(({ surface }) => surface.reading?.sticks[stick] ?? MIDDLE)
  const gives = stickResponse(at, response)
  return (
    <figure className="surface-plot">
      <svg
        viewBox="-1.1 -1.1 2.2 2.2"
        role="img"
        aria-label={`${stick} stick: ${placeWords(at)}; gives ${placeWords(gives)}`}
      >
        <circle className="rim" r="1" />
        <path className="cross" d="M-1 0H1M0 -1V1" />
        <circle className="dead" r={response.deadZone} />
        <circle className="at" cx={at.x} cy={0 - at.y} r="0.08" />
        <circle className="gives" cx={gives.x} cy={0 - gives.y} r="0.05" />
      </svg>
      <figcaption>
        {stick} stick
        <br />
        <span className="dim">{uses}</span>
      </figcaption>
    </figure>
  )
}

const pathOf = (points: readonly Deflection[]): string =>
  points
    .map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(4)} ${(1 - y).toFixed(4)}`)
    .join('')

/** The response: across how far a control is moved, up how fast its number goes. */
const ResponsePlot = ({ response }: { response: Response }) => {
  const travel = useAppState(({ surface }) => {
    const { left, right } = surface.reading?.sticks ?? { left: MIDDLE, right: MIDDLE }
    return Math.min(1, Math.max(Math.hypot(left.x, left.y), Math.hypot(right.x, right.y)))
  })
  const { x } = stickResponse({ x: travel, y: 0 }, response)
  return (
    <figure className="surface-plot">
      <svg
        viewBox="-0.05 -0.05 1.1 1.1"
        role="img"
        aria-label={`response: moved ${formatNumber(travel, 2)} of its way a control gives ${formatNumber(x, 2)} of its speed`}
      >
        <rect className="dead" width={response.deadZone} height="1" />
        <path className="rim" d="M0 0V1H1" />
        <path className="curve-line" d={pathOf(responseCurve(response, 100))} />
        <circle className="gives" cx={travel} cy={1 - x} r="0.03" />
      </svg>
      <figcaption>
        response
        <br />
        <span className="dim">moved → speed</span>
      </figcaption>
    </figure>
  )
}

/** The sticks and the response curve, live. */
export const SurfacePlots = ({ uses }: { uses: Readonly<Record<StickName, string>> }) => {
  const response = useAppState(({ preferences }) => preferences.surface.response)
  return (
    <div className="surface-plots">
      <StickPlot stick="left" uses={uses.left} />
      <StickPlot stick="right" uses={uses.right} />
      <ResponsePlot response={response} />
    </div>
  )
}
