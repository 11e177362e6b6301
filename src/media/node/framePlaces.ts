/** Where frames lie in a stream whose every picture has a time of its own. */
export type FramePlaces = {
  /** Time of each frame, in the stream's units, by its rank. */
  readonly times: readonly number[]
  readonly rankOf: (time: number) => number | undefined
  /**
   * Rank and seconds of the last key frame at or before a frame. Where the stream has open groups
   * of pictures it is the first of all: decoding that begins at a later one tells of errors.
   */
  readonly keyBefore: (rank: number) => { readonly rank: number; readonly seconds: number }
  /** The first key frame after a frame, or how many frames there are. */
  readonly keyAfter: (rank: number) => number
}

/** What is read of a packet: its time in units and in seconds, and whether it is a key frame. */
export type TimedPacket = {
  readonly pts?: number
  readonly pts_time?: string
  readonly flags?: string
}

/** Whether pictures shown before a key frame follow it in the order of the stream. */
const hasOpenGroups = (packets: readonly TimedPacket[]): boolean => {
  let key = -Infinity
  return packets.some(({ pts = Infinity, flags = '' }) => {
    if (flags.startsWith('K')) key = pts
    return pts < key
  })
}

/**
 * The places of a stream's frames by the times of its packets in the order of the stream; undefined where a picture has no
 * time, shares one with another, or where packets are not pictures (`frames` differs).
 */
export const framePlaces = (
  packets: readonly TimedPacket[],
  frames: number,
): FramePlaces | undefined => {
  const timed = packets.flatMap(({ pts, pts_time, flags = '' }) =>
    pts === undefined || pts_time === undefined
      ? []
      : [{ time: pts, seconds: Number(pts_time), isKey: flags.startsWith('K') }],
  )
  timed.sort((a, b) => a.time - b.time)
  const ranks = new Map(timed.map(({ time }, rank) => [time, rank]))
  if (timed.length !== packets.length || timed.length !== frames || ranks.size !== frames)
    return undefined
  const isOpen = hasOpenGroups(packets)
  const keys = timed.flatMap(({ isKey, seconds }, rank) => (isKey ? [{ rank, seconds }] : []))
  const begin = { rank: 0, seconds: timed[0]?.seconds ?? 0 }
  return {
    times: timed.map(({ time }) => time),
    rankOf: (time) => ranks.get(time),
    keyBefore: (rank) => (isOpen ? undefined : keys.findLast((key) => key.rank <= rank)) ?? begin,
    keyAfter: (rank) => keys.find((key) => key.rank > rank)?.rank ?? frames,
  }
}
