/** Types that stand for a variant of a loop, so that each is compiled by itself. */
export class Powered {}
export class Linear {}
export class Saturated {}
export class Unsaturated {}
export class Filtered {}
export class Unfiltered {}
/**
 * What is wanted of a row: Y′CbCr codes alone; R′G′B′ and Y′CbCr codes; its levels; or both.
 */
export class Delivered {}
export class Kept {}
export class Measured {}
export class KeptAndMeasured {}
export class Composite {}
export class Component {}
/** Whether the grade comes at once, or a process list before it. */
export class Graded {}
export class Ungraded {}

/** A line of chroma by itself, or the upper and the lower of two that share it. */
export class Alone {}
export class Upper {}
export class Lower {}

/** Whether a type argument is `V`: known when compiled. */
// @ts-ignore: decorator
@inline
export function is<T, V>(): bool {
  return idof<T>() == idof<V>()
}
