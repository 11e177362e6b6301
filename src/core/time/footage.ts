/** Film gauges by the number of pictures a foot holds (facts: see FRAMES_PER_FOOT). */
export type Gauge =
  | '35mm-4perf'
  | '35mm-3perf'
  | '35mm-2perf'
  | '16mm'
  | '9.5mm'
  | 'super8'
  | 'standard8'
