import { type Frame, frame } from '../time/frame.ts'
import type { FlashReport, FlashSeries } from './flashReport.ts'

const sliced = (series: FlashSeries, from: number, to: number): FlashSeries => ({
  up: series.up.subarray(from, to),
  down: series.down.subarray(from, to),
  redUp: series.redUp.subarray(from, to),
  redDown: series.redDown.subarray(from, to),
  changes: series.changes.subarray(from, to),
  redChanges: series.redChanges.subarray(from, to),
})

/**
 * What a report holds of the frames `first` up to `end`: breaches and cautions that reach into them,
 * whole, as flashes go on across cuts; and their part of the series, shared with the report.
 */
export const flashesOfCue = (report: FlashReport, first: Frame, end: Frame): FlashReport => {
  const from = Math.max(0, first - report.first)
  const to = Math.max(from, Math.min(report.frames, end - report.first))
  const reaches = (span: { readonly first: Frame; readonly last: Frame }) =>
    span.first < end && span.last >= first
  return {
    ...report,
    first: frame(report.first + from),
    frames: to - from,
    breaches: report.breaches.filter(reaches),
    long: report.long.filter(reaches),
    series: sliced(report.series, from, to),
  }
}
