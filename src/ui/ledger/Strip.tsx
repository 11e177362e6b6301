import { memo } from 'react'
import type { Cue } from '../../core/job/job.ts'
import type { Frame } from '../../core/time/frame.ts'
import { rampPath, slotFrame } from './rowLayout.ts'
import { StillPair, stillHeightOf } from './StillPair.tsx'

/** The width of the two pictures of the strip beside each other. */
const PICTURES_WIDTH = 162

/** Ramps drawn lower than this would not be seen. */
const LEAST_SLOPE = 3

export type StripProps = {
  readonly cue: Cue
  readonly previous: Cue | undefined
  readonly end: Frame
  readonly aspect: number
  readonly height: number
  /** Stills along the cue, and which of them are drawn. */
  readonly slots: number
  readonly slotFrom: number
  readonly slotTo: number
}

/** A cue's stretch of the film: its pictures, as often as there is room, and the ramp it begins with. */
export const Strip = memo((props: StripProps) => {
  const { cue, previous, end, aspect, height, slots, slotFrom, slotTo } = props
  const pitch = height / slots
  const stillHeight = stillHeightOf(aspect)
  const shown = Array.from({ length: Math.max(0, slotTo - slotFrom) }, (_, i) => slotFrom + i)
  return (
    <>
      {shown.map((slot) => (
        <div
          key={slot}
          className="still-pair"
          style={{ top: slot * pitch + (pitch - stillHeight) / 2 }}
        >
          <StillPair
            cue={cue}
            previous={previous}
            frame={slotFrame(cue, end, slot, slots)}
            aspect={aspect}
          />
        </div>
      ))}
      {cue.ramp > 0 && previous && <RampSlope cue={cue} end={end} height={height} />}
    </>
  )
})

/** A slope over the frames that the ramp lasts, drawn over the pictures. */
const RampSlope = ({ cue, end, height }: { cue: Cue; end: Frame; height: number }) => {
  const slope = Math.max(LEAST_SLOPE, (height * cue.ramp) / (end - cue.first))
  const words = `ramp over ${cue.ramp} frames${cue.rampShape === 'eased' ? ', eased' : ''}`
  return (
    <>
      <svg
        className="ramp-slope"
        width={PICTURES_WIDTH}
        height={Math.min(height, slope)}
        aria-hidden
      >
        <title>{words}</title>
        <path className="under" d={rampPath(cue, PICTURES_WIDTH, slope)} />
        <path d={rampPath(cue, PICTURES_WIDTH, slope)} />
      </svg>
      {height >= 16 && (
        <span className="ramp-sign" title={words} aria-hidden="true">
          {cue.ramp} fr{cue.rampShape === 'eased' ? ' eased' : ''}
        </span>
      )}
      <span className="unseen">{words}</span>
    </>
  )
}
