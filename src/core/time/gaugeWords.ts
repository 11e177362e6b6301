import type { Gauge } from './footage.ts'

/** Gauges as they are written. */
export const GAUGE_WORDS: Readonly<Record<Gauge, string>> = {
  '35mm-4perf': '35 mm, 4 perforations',
  '35mm-3perf': '35 mm, 3 perforations',
  '35mm-2perf': '35 mm, 2 perforations',
  '16mm': '16 mm',
  super16: 'Super 16',
  '9.5mm': '9.5 mm',
  super8: 'Super 8',
  standard8: 'Standard 8',
}
