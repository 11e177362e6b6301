import { BLANKING_RATIOS, namedRatio, openRatio } from '../../core/framing/openRatio.ts'
import type { Media } from '../../core/job/job.ts'
import { type Framing, sameFraming } from '../../core/picture/framing.ts'
import { currentCue, reelOf } from '../../store/queries.ts'
import { useAppState } from '../appContext.ts'
import { blankingCommandId } from '../commands/framingCommands.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { formatNumber } from '../parts/numberText.ts'
import { FramingNumber } from './FramingNumber.tsx'
import { FramingPresets } from './FramingPresets.tsx'
import { FramingSketch } from './FramingSketch.tsx'
import { useFramingInForce } from './useFramingInForce.ts'

/** What is left open and what is black, said plainly. */
const openWords = (blanking: number, aspect: number): string => {
  const open = `open: ${formatNumber(openRatio(blanking, aspect), 2)} : 1`
  if (blanking === 0) return `${open}, the whole delivered picture`
  const each = `${formatNumber(Math.abs(blanking) * 50, 1)} %`
  return blanking > 0
    ? `${open}; black: ${each} of the height above, ${each} below`
    : `${open}; black: ${each} of the width left, ${each} right`
}

/** How much of the scan the frame is: what the delivered picture is made of. */
const scannedWords = ({ zoom, squeeze }: Framing, { width, height }: Media): string => {
  const [across, down] = [width / (zoom * squeeze), height / zoom].map((size) =>
    formatNumber(size, 0),
  )
  return `${across} × ${down} scanned pixels`
}

/** The cue's framing: where the delivered picture lies on the scanned one, and what is blanked. */
export const FramingSheet = () => {
  const cue = useAppState(currentCue)
  const reel = useAppState(reelOf)
  const framing = useFramingInForce()
  if (!cue || !reel || !framing) return null
  const { displayAspect } = reel.media
  const { squeeze, blanking } = cue.framing
  const named = namedRatio(blanking, displayAspect)
  const isInRamp = !sameFraming(framing.own, framing.inForce)
  return (
    <section className="sheet framing-sheet" aria-label="Framing">
      <div className="framing-place">
        <h3>delivered frame on the scan</h3>
        <FramingSketch {...framing} aspect={displayAspect} />
        <p className="dim">{scannedWords(framing.inForce, reel.media)}</p>
        {isInRamp && <p className="dim">broken: where the ramp leads</p>}
      </div>
      <div className="framing-controls">
        <div className="framing-fields">
          <FramingNumber cue={cue} field="zoom" />
          <FramingNumber cue={cue} field="rotation" />
          <span />
          <FramingNumber cue={cue} field="pan" />
          <FramingNumber cue={cue} field="squeeze" />
          <fieldset className="framing-choice" aria-label="Squeeze">
            <CommandButton id="squeeze-1" label="1.0" isPressed={squeeze === 1} isTerse />
            <CommandButton id="squeeze-2" label="2.0" isPressed={squeeze === 2} isTerse />
          </fieldset>
          <FramingNumber cue={cue} field="tilt" />
          <FramingNumber cue={cue} field="blanking" />
          <fieldset className="framing-choice" aria-label="Blanking">
            <CommandButton id="blank-none" label="none" isPressed={blanking === 0} isTerse />
            {BLANKING_RATIOS.map((ratio) => (
              <CommandButton
                key={ratio.name}
                id={blankingCommandId(ratio)}
                label={ratio.name}
                isPressed={named === ratio && blanking !== 0}
                isTerse
              />
            ))}
          </fieldset>
        </div>
        <p>{openWords(blanking, displayAspect)}</p>
        <div className="button-row">
          <FramingPresets gauge={reel.gauge} />
          <CommandButton id="reset-framing" label="Reset" />
        </div>
      </div>
    </section>
  )
}
