/** The drawing of a track's envelope: how wide and high it is, in its own units. */
export const WAVE = { width: 440, height: 64 } as const

/** Envelope values a second, as a sound meter gives them. */
const A_SECOND = 200

/** A stretch of a track, in seconds; it may begin before 0. */
export type Stretch = { readonly from: number; readonly to: number }

/** Seconds to each side of the mark that are shown close up. */
const NEAR = 1

export const wholeTrack = (seconds: number): Stretch => ({ from: 0, to: Math.max(seconds, 0.1) })
export const nearMark = (seconds: number): Stretch => ({ from: seconds - NEAR, to: seconds + NEAR })

/** A stretch of an envelope as the outline of a filled shape, mirrored about the middle. */
export const wavePath = (envelope: Float32Array, { from, to }: Stretch): string => {
  const middle = WAVE.height / 2
  const tops: string[] = []
  const bottoms: string[] = []
  for (let x = 0; x < WAVE.width; x++) {
    const at = (column: number) =>
      Math.floor((from + ((to - from) * column) / WAVE.width) * A_SECOND)
    const [first, end] = [at(x), Math.max(at(x) + 1, at(x + 1))]
    let highest = 0
    for (let i = Math.max(0, first); i < Math.min(end, envelope.length); i++)
      highest = Math.max(highest, envelope[i] ?? 0)
    const y = Math.round(10 * highest * middle) / 10
    tops.push(`${x} ${middle - y}`)
    bottoms.unshift(`${x} ${middle + y}`)
  }
  return `M${[...tops, ...bottoms].join('L')}Z`
}

/** Where a second of the track is drawn, and the second that a part of the width is. */
export const waveX = (seconds: number, { from, to }: Stretch): number =>
  (WAVE.width * (seconds - from)) / (to - from)
export const waveSeconds = (part: number, { from, to }: Stretch): number =>
  Math.round(1000 * (from + part * (to - from))) / 1000
