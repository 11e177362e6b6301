import type { FlashReport } from './flashReport.ts'

/** What flashes within a cue by itself: a report without its series. */
export type CueFlashes = Pick<FlashReport, 'breaches' | 'long'>

/** What is kept of a cue's report; undefined where it tells of nothing. */
export const cueFlashes = (report: FlashReport | undefined): CueFlashes | undefined =>
  report && report.breaches.length + report.long.length > 0
    ? { breaches: report.breaches, long: report.long }
    : undefined
