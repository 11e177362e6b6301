/** Share of the distances between pictures that must be alike for a video to have one rate. */
const EVEN_SHARE = 0.9

/** How far a distance may be from the middle one: stamps in whole milliseconds round by one. */
const TOLERANCE = 0.1
const STAMP_STEP = 0.0011

/**
 * Whether pictures follow each other evenly, so that they have one rate. A picture shown for twice
 * the time here and there does not make a rate; no pictures or one have none.
 *
 * @param times seconds, in order of presentation
 */
export const areTimesEven = (times: readonly number[]): boolean => {
  if (times.length < 2) return false
  const distances = new Float64Array(times.length - 1)
  for (let i = 0; i < distances.length; i++) distances[i] = (times[i + 1] ?? 0) - (times[i] ?? 0)
  const middle = distances.toSorted()[distances.length >> 1] ?? 0
  if (middle <= 0) return false
  const reach = Math.max(middle * TOLERANCE, STAMP_STEP)
  const alike = distances.reduce((count, d) => count + (Math.abs(d - middle) <= reach ? 1 : 0), 0)
  return alike >= distances.length * EVEN_SHARE
}
