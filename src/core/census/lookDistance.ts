import { type CueLook, LOOK_SIDE } from './cueLook.ts'

/** The same parts over boxes of twice the side. */
const merged = (spread: Float32Array, side: number): Float32Array => {
  const half = side / 2
  const into = new Float32Array(half ** 3)
  let from = 0
  for (let a = 0; a < side; a++)
    for (let b = 0; b < side; b++)
      for (let c = 0; c < side; c++) {
        const place = ((a >> 1) * half + (b >> 1)) * half + (c >> 1)
        into[place] = (into[place] as number) + (spread[from++] as number)
      }
  return into
}

const pyramids = new WeakMap<CueLook, readonly Float32Array[]>()

/** A look's parts over boxes of 8, 4 and 2 a side; made once for each look. */
const pyramidOf = (look: CueLook): readonly Float32Array[] => {
  const known = pyramids.get(look)
  if (known) return known
  const made: Float32Array[] = [look.spread]
  for (let side = LOOK_SIDE; side > 2; side /= 2)
    made.push(merged(made.at(-1) as Float32Array, side))
  pyramids.set(look, made)
  return made
}

/**
 * How unlike two cues look, 0 (the same colours in the same amounts) … 1 (none in common): the part
 * of the pixels that are of other colours, the mean over boxes of three sizes. So a colour that has
 * moved a little counts for less than one that is not there. It knows nothing of places. A way of
 * this project, after the pyramids of histograms of Grauman and Darrell (ICCV 2005).
 */
export const lookDistance = (a: CueLook, b: CueLook): number => {
  if (a === b) return 0
  const [own, other] = [pyramidOf(a), pyramidOf(b)]
  let sum = 0
  for (const [k, parts] of own.entries()) {
    const others = other[k] as Float32Array
    let apart = 0
    for (let i = 0; i < parts.length; i++)
      apart += Math.abs((parts[i] as number) - (others[i] as number))
    sum += apart / 2
  }
  return sum / own.length
}
