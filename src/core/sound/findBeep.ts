/** Envelope values a second, as a sound meter gives them. */
const A_SECOND = 200

/** Seconds before it in which nothing as loud is heard, and how long a beep lasts. */
const QUIET = 0.3
const SHORTEST = 0.015
const LONGEST = 0.3

/** A beep rises this many times above what is before it, and to this much of full scale. */
const RISE = 8
const LEAST = 0.03

/**
 * The first short sound that stands alone in an envelope of the highest of every 5 ms, as a leader
 * has it for synchronising, in seconds; undefined where there is none.
 */
export const findBeep = (envelope: Float32Array): number | undefined => {
  const quiet = Math.round(QUIET * A_SECOND)
  for (let at = 1; at < envelope.length; at++) {
    const level = envelope[at] ?? 0
    if (level < LEAST) continue
    let before = 0
    for (let i = Math.max(0, at - quiet); i < at; i++) before = Math.max(before, envelope[i] ?? 0)
    if (level < RISE * before) continue
    let highest = level
    let end = at
    while (end < envelope.length && (envelope[end] ?? 0) > highest / RISE) {
      highest = Math.max(highest, envelope[end] ?? 0)
      end++
    }
    const seconds = (end - at) / A_SECOND
    if (seconds >= SHORTEST && seconds <= LONGEST) return at / A_SECOND
    at = end
  }
  return undefined
}
