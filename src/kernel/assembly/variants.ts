/** Types that stand for a variant of a loop, so that each is compiled by itself. */
export class Powered {}
export class Linear {}
export class Saturated {}
export class Unsaturated {}
export class Filtered {}
export class Unfiltered {}
export class Delivered {}
export class Composite {}
export class Component {}

/** Whether a type argument is `V`: known when compiled. */
// @ts-ignore: decorator
@inline
export function is<T, V>(): bool {
  return idof<T>() == idof<V>()
}
