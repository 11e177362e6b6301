import { FLASH_CAUTION } from '../../core/flashes/caution.ts'
import { FLASH_METHOD, FLASH_NAMES, flashWords, longWords } from '../../core/flashes/flashWords.ts'
import type { Frame } from '../../core/time/frame.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { shownFlashesOf } from '../../store/checkKey.ts'
import { currentCue, reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { FLASH_SIGNS } from '../parts/flashSigns.ts'
import { STRINGS } from '../strings.ts'

/** Warns of what flashes in the cue under the line as it is graded; nothing where nothing does. */
export const FlashPanel = () => {
  const { services } = useApp()
  const reel = useAppState(reelOf)
  const flashes = useAppState((state) => {
    const cue = currentCue(state)
    return cue && shownFlashesOf(state, cue)
  })
  if (!reel || !flashes) return null
  const goTo = (at: Frame) => (
    <button type="button" className="link" onClick={() => services.seek(at)}>
      {formatTimecode(reel.startCount + at, reel.rate, reel.isDropFrame)}
    </button>
  )
  return (
    <div className="panel flash-panel" role="status" aria-label={STRINGS.flashes.name}>
      <h2 title={FLASH_METHOD}>{STRINGS.flashes.heading}</h2>
      <ul>
        {flashes.breaches.map((breach) => (
          <li key={`${breach.kind} ${breach.first}`} title={flashWords(breach)}>
            <span aria-hidden="true">{FLASH_SIGNS[breach.kind]} </span>
            <b>{FLASH_NAMES[breach.kind]}</b> {goTo(breach.first)}…{goTo(breach.last)}
          </li>
        ))}
        {flashes.long.map((long) => (
          <li key={`long ${long.kind} ${long.first}`} title={longWords(long)}>
            <span aria-hidden="true">{FLASH_SIGNS.long} </span>
            {STRINGS.flashes.long} {goTo(long.first)}…{goTo(long.last)}
          </li>
        ))}
      </ul>
      <p className="dim">
        {STRINGS.flashes.within} {FLASH_CAUTION}
      </p>
    </div>
  )
}
