import { FLASH_CAUTION } from '../../core/flashes/caution.ts'
import { isWithinFlashLimits } from '../../core/flashes/flashReport.ts'
import type { Frame } from '../../core/time/frame.ts'
import { isFlashWatchStale } from '../../store/flashWatch.ts'
import { setStep } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'
import { paceText } from '../parts/paceText.ts'
import { FlashPlot } from './FlashPlot.tsx'

/** The check of the whole reel for flashes, across its cuts, with what it found. */
export const FlashCard = () => {
  const { store, services } = useApp()
  const { progress, found } = useAppState(({ flashWatch }) => flashWatch)
  const isStale = useAppState(isFlashWatchStale)
  const isOpen = useAppState(({ media }) => media === 'ready')
  const goTo = (frame: Frame) => {
    setStep(store, 'rehearse')
    services.seek(frame)
  }
  return (
    <section aria-label="Flashes" className="whole-width flash-card">
      <h2>Flashes and stripes of the whole reel</h2>
      <p>
        Every frame as it would be delivered is watched for flashes and stripes, from cue to cue as
        well. {found ? '' : FLASH_CAUTION}
      </p>
      <div className="button-row">
        <button
          type="button"
          className="button"
          disabled={!isOpen || progress !== undefined}
          onClick={() => void services.flashes.watch()}
        >
          {found ? 'Watch the reel again' : 'Watch the reel'}
        </button>
        {progress && (
          <button type="button" className="button" onClick={services.flashes.stop}>
            Stop
          </button>
        )}
      </div>
      <p role="status">{progress && paceText('Watching', progress)}</p>
      {found && (
        <>
          <p>
            {isWithinFlashLimits(found.report)
              ? '● No limit of flashes or stripes is passed.'
              : `◐ ${found.report.breaches.length === 1 ? 'A limit is' : 'Limits are'} passed.`}
            {isStale && ' The cues have changed since: watch the reel again.'}
          </p>
          <FlashPlot report={found.report} cues={found.cues} reel={found.reel} onGoTo={goTo} />
        </>
      )}
    </section>
  )
}
