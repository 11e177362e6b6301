/** The middle of some numbers. */
export const median = (numbers) => {
  const sorted = [...numbers].sort((a, b) => a - b)
  return sorted[sorted.length >> 1]
}
