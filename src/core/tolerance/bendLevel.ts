/** Levels are kept from `low` to `high`, and bent over the last `knee` before each. */
export type LevelRange = { readonly low: number; readonly high: number; readonly knee: number }

/**
 * A level kept from `low` to `high`. From `low + knee` to `high − knee` it stays as it is; past
 * that, d further, it is k·d/(k + d) further (k = `knee`): the slope is 1 at the knee and falls
 * from there, the limit is come near to and never passed. A knee of 0 clips. Monotone.
 */
export const bendLevel = (level: number, { low, high, knee }: LevelRange): number => {
  const kept = Math.min(Math.max(level, low + knee), high - knee)
  const past = level - kept
  if (past === 0) return level
  const bent = kept + (knee * past) / (Math.abs(past) + knee)
  return Math.min(Math.max(bent, low), high)
}
