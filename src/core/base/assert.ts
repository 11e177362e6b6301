/** Throws on a broken invariant: a bug in this program, never bad input. */
export function assert(condition: boolean, message: string): asserts condition {
  if (!condition) throw new Error(`Bug: ${message}`)
}

/** An array element whose index the caller knows to be inside. */
export const at = <T>(items: ArrayLike<T>, index: number): T => {
  const item = items[index]
  if (item === undefined) throw new Error(`Bug: index ${index} outside 0…${items.length - 1}`)
  return item
}
