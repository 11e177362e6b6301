export type NumberRange = readonly [from: number, to: number]

/** Rising numbers as stretches without a gap: 2, 3, 4 and 9 are 2 to 4 and 9 to 9. */
export const rangesOf = (numbers: readonly number[]): readonly NumberRange[] => {
  const ranges: [number, number][] = []
  for (const number of numbers) {
    const last = ranges.at(-1)
    if (last && number === last[1] + 1) last[1] = number
    else ranges.push([number, number])
  }
  return ranges
}
