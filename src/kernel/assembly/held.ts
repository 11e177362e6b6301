const slots = memory.data(32 * 16, 16)

/**
 * A vector to be held in a register over a loop, by way of memory slot `slot` (0…31, each once in
 * a function). Engines build a splat or a vector literal anew in every turn of a loop that uses
 * it; what was loaded before the loop they keep.
 */
// @ts-ignore: decorator
@inline
export function held(slot: i32, vector: v128): v128 {
  const at = slots + (slot << 4)
  v128.store(at, vector)
  return v128.load(at)
}
