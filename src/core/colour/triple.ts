/** One value each for red, green and blue. */
export type Triple = readonly [r: number, g: number, b: number]

export const triple = (r: number, g = r, b = r): Triple => [r, g, b]

export const mapTriple = (t: Triple, fn: (value: number, channel: 0 | 1 | 2) => number): Triple => [
  fn(t[0], 0),
  fn(t[1], 1),
  fn(t[2], 2),
]

export const sameTriple = (a: Triple, b: Triple): boolean =>
  a[0] === b[0] && a[1] === b[1] && a[2] === b[2]
