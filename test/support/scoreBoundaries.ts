/** Counts of matched and unmatched boundaries (facts: quality.md §1). */
export type BoundaryScore = {
  readonly hits: number
  readonly falseOnes: number
  readonly missed: number
  readonly precision: number
  readonly recall: number
  readonly f1: number
}

const ratio = (part: number, whole: number): number => (whole === 0 ? 0 : part / whole)

/**
 * Matches detections to true cuts one to one where they are at most `tolerance` frames apart: on
 * sorted lists a sweep with two pointers finds the most matches.
 */
export const scoreBoundaries = (
  truth: readonly number[],
  found: readonly number[],
  tolerance: number,
): BoundaryScore => {
  const a = [...truth].sort((x, y) => x - y)
  const b = [...found].sort((x, y) => x - y)
  let hits = 0
  for (let i = 0, j = 0; i < a.length && j < b.length; ) {
    const distance = (b[j] as number) - (a[i] as number)
    if (Math.abs(distance) <= tolerance) {
      hits++
      i++
      j++
    } else if (distance < 0) j++
    else i++
  }
  const precision = ratio(hits, found.length)
  const recall = ratio(hits, truth.length)
  return {
    hits,
    falseOnes: found.length - hits,
    missed: truth.length - hits,
    precision,
    recall,
    f1: ratio(2 * precision * recall, precision + recall),
  }
}
