import { useEffect, useRef, useState } from 'react'
import { cuesOf, reelOf } from '../../store/queries.ts'
import { standingOf } from '../../store/standing.ts'
import { useApp, useAppState } from '../appContext.ts'
import { sizeText } from '../parts/sizeText.ts'
import { Tick } from '../parts/Tick.tsx'

/** What will be missing from the report as things stand, a sentence each. */
const useMissing = (): readonly string[] => {
  const isOpen = useAppState(({ media }) => media === 'ready')
  const unmeasured = useAppState((state) => cuesOf(state).length - standingOf(state).measured)
  return [
    ...(isOpen ? [] : ['The scan is not open: there will be no pictures.']),
    ...(unmeasured > 0
      ? [
          `${unmeasured === 1 ? '1 cue is' : `${unmeasured} cues are`} not measured; it will say so.`,
        ]
      : []),
  ]
}

/** Saves the report of the reel, telling how far it is; it can be stopped. */
export const ReportCard = () => {
  const { services } = useApp()
  const bytes = useAppState((state) => reelOf(state)?.media.bytes ?? 0)
  const isOpen = useAppState(({ media }) => media === 'ready')
  const missing = useMissing()
  const [wantsChecksum, setWantsChecksum] = useState(false)
  const [progress, setProgress] = useState<string>()
  const running = useRef<AbortController>(undefined)
  useEffect(() => () => running.current?.abort(), [])
  const save = async (): Promise<void> => {
    const stop = new AbortController()
    running.current = stop
    setProgress('Making the report')
    const onProgress = (words: string) => {
      if (!stop.signal.aborted) setProgress(words)
    }
    await services.saveReport({ wantsChecksum, onProgress, signal: stop.signal })
    if (running.current !== stop) return
    running.current = undefined
    setProgress(undefined)
  }
  return (
    <section aria-label="Report">
      <h2>Report</h2>
      <p>
        One page of HTML to read and to print on A4: the particulars of reel and scan, every cue
        with its pictures, numbers, verdict and words, how to repeat the grades, and what the lists
        lose. Its pictures are in it; it fetches nothing.
      </p>
      {missing.length > 0 && (
        <ul>
          {missing.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {isOpen && (
        <Tick isTicked={wantsChecksum} onTick={setWantsChecksum}>
          with the checksum of the scan (reads all of its {sizeText(bytes)})
        </Tick>
      )}
      <div className="button-row">
        <button
          type="button"
          className="button primary"
          disabled={progress !== undefined}
          onClick={() => void save()}
        >
          Save the report
        </button>
        {progress !== undefined && (
          <button type="button" className="button" onClick={() => running.current?.abort()}>
            Stop
          </button>
        )}
      </div>
      <p role="status">{progress}</p>
    </section>
  )
}
