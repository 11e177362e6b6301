/** Small OpenTimelineIO documents for tests, as plain data. */
type Data = Readonly<Record<string, unknown>>

export const time = (value: number, rate = 25): Data => ({
  OTIO_SCHEMA: 'RationalTime.1',
  rate,
  value,
})

export const range = (start: number, duration: number, rate = 25): Data => ({
  OTIO_SCHEMA: 'TimeRange.1',
  start_time: time(start, rate),
  duration: time(duration, rate),
})

export const clip = (name: string, start: number, duration: number, more: Data = {}): Data => ({
  OTIO_SCHEMA: 'Clip.2',
  name,
  source_range: range(start, duration),
  ...more,
})

export const gap = (duration: number): Data => ({
  OTIO_SCHEMA: 'Gap.1',
  source_range: range(0, duration),
})

export const transition = (before: number, after: number, type = 'SMPTE_Dissolve'): Data => ({
  OTIO_SCHEMA: 'Transition.1',
  transition_type: type,
  in_offset: time(before),
  out_offset: time(after),
})

export const track = (children: readonly unknown[], more: Data = {}): Data => ({
  OTIO_SCHEMA: 'Track.1',
  name: 'V',
  kind: 'Video',
  children,
  ...more,
})

export const stack = (children: readonly unknown[], more: Data = {}): Data => ({
  OTIO_SCHEMA: 'Stack.1',
  name: 'tracks',
  children,
  ...more,
})

export const timeline = (tracks: readonly unknown[], more: Data = {}): Data => ({
  OTIO_SCHEMA: 'Timeline.1',
  name: 'T',
  tracks: stack(tracks),
  ...more,
})
