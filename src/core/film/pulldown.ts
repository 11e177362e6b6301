/** Film frames of a 2:3 cycle by their letters. */
const LETTERS = ['A', 'B', 'C', 'D'] as const

export type PulldownLetter = (typeof LETTERS)[number]

/** The film frames whose fields a video frame shows, from 0 from an A frame, first field first. */
export type PulledFrame = {
  readonly fields: readonly [number, number]
  /** Whether both fields are of one film frame. */
  readonly isWhole: boolean
}

/** For each of five video frames, the film frames of its two fields within the cycle of four. */
const CYCLE = [
  [0, 0],
  [1, 1],
  [1, 2],
  [2, 3],
  [3, 3],
] as const

/**
 * 2:3 pulldown, 24 frames of film a second in 60 fields: A A, B B, B C, C D, D D (SMPTE RP 197 and
 * common practice, from memory). `video` is counted from 0 from a video frame that shows an A frame.
 */
export const pulledFrame = (video: number): PulledFrame => {
  const [first, second] = CYCLE[((video % 5) + 5) % 5] ?? [0, 0]
  const cycle = 4 * Math.floor(video / 5)
  return { fields: [cycle + first, cycle + second], isWhole: first === second }
}

/** The letter of a film frame, from 0 from an A frame. */
export const pulldownLetter = (film: number): PulldownLetter => LETTERS[((film % 4) + 4) % 4] ?? 'A'

/** The video frames that show a film frame, the first and the last. */
export const videoFramesOf = (film: number): readonly [first: number, last: number] => {
  const place = ((film % 4) + 4) % 4
  const cycle = 5 * Math.floor(film / 4)
  const shows = CYCLE.flatMap(([first, second], video) =>
    first === place || second === place ? [video] : [],
  )
  return [cycle + (shows[0] ?? 0), cycle + (shows.at(-1) ?? 0)]
}
