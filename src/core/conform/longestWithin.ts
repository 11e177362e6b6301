/**
 * Of consecutive stretches, given by where each begins and where the last ends, the one that most
 * of a span lies in: the first of those of equal share; undefined where the span meets none. Each
 * question is answered in the time of a search, however many stretches a span covers.
 */
export const longestWithin = (
  firsts: readonly number[],
  end: number,
): ((from: number, to: number) => number | undefined) => {
  const count = firsts.length
  const edge = (place: number): number => firsts[place] ?? end
  const longer = (a: number, b: number): number =>
    edge(b + 1) - edge(b) > edge(a + 1) - edge(a) ? b : a
  /** Level k holds the longest of each 2^k stretches in a row. */
  const levels: Int32Array[] = [Int32Array.from({ length: count }, (_, place) => place)]
  for (let half = 1; 2 * half <= count; half *= 2) {
    const below = levels.at(-1) as Int32Array
    levels.push(
      Int32Array.from({ length: count - 2 * half + 1 }, (_, place) =>
        longer(below[place] as number, below[place + half] as number),
      ),
    )
  }
  const longest = (from: number, to: number): number => {
    const level = 31 - Math.clz32(to - from)
    const row = levels[level] as Int32Array
    return longer(row[from] as number, row[to - 2 ** level] as number)
  }
  const placeAt = (frame: number): number => {
    let low = 0
    let high = count
    while (low < high) {
      const middle = (low + high) >> 1
      if (edge(middle) <= frame) low = middle + 1
      else high = middle
    }
    return low - 1
  }
  return (from, to) => {
    const begin = Math.max(from, edge(0))
    const stop = Math.min(to, end)
    if (count === 0 || begin >= stop) return undefined
    const a = placeAt(begin)
    const b = placeAt(stop - 1)
    const share = (place: number) => Math.min(stop, edge(place + 1)) - Math.max(begin, edge(place))
    const candidates = [a, ...(b > a + 1 ? [longest(a + 1, b)] : []), ...(b > a ? [b] : [])]
    return candidates.reduce((best, place) => (share(place) > share(best) ? place : best))
  }
}
