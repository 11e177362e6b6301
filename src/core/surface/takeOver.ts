/** What is remembered of a control that stands somewhere, in the units of the number it moves. */
export type Taken = {
  /** Where it stood last; undefined before its first message. */
  readonly at: number | undefined
  /** What it set the number to last; undefined while it has not taken over. */
  readonly set: number | undefined
}

export const NOT_TAKEN: Taken = { at: undefined, set: undefined }

/** As near as a job keeps numbers that were set from a control. */
const SAME = 1e-6

/**
 * Whether a control that now stands at `position` may set a number that is now `present`. It takes
 * over where it meets or passes the number, so that nothing jumps; from then on it holds it until
 * something else moves the number. `near` is how far apart still counts as met: half a step of the
 * control. Common practice, no published source.
 */
export const takeOver = (
  taken: Taken,
  position: number,
  present: number,
  near: number,
): { readonly taken: Taken; readonly holds: boolean } => {
  const isOurs = taken.set !== undefined && Math.abs(taken.set - present) <= SAME
  const isMet = Math.abs(position - present) <= near
  const isPassed = taken.at !== undefined && (taken.at - present) * (position - present) <= 0
  const holds = isOurs || isMet || isPassed
  return { taken: { at: position, set: holds ? position : undefined }, holds }
}
