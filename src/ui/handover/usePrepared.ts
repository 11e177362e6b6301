import { useEffect, useState } from 'react'
import type { HandOverFormat } from '../../core/formats/handOverFormats.ts'
import type { PreparedFormat } from '../../core/formats/prepareFormat.ts'
import { jobOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'

export type Prepared = ReadonlyMap<HandOverFormat, PreparedFormat>

const NONE: Prepared = new Map()

/** What would be handed over, worked out once for each state of the job, format by format. */
export const usePrepared = (): Prepared => {
  const { services } = useApp()
  const job = useAppState(jobOf)
  const [prepared, setPrepared] = useState(NONE)
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is handed over is made from the job
  useEffect(() => {
    const stop = new AbortController()
    void services.handOver.prepare((part) => {
      if (!stop.signal.aborted) setPrepared((before) => new Map(before).set(part.format, part))
    }, stop.signal)
    return () => stop.abort()
  }, [services, job])
  return prepared
}
