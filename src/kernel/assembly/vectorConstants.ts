/**
 * Constants of the inner loops, to be splat before them. They are mutable so that the compiler
 * does not fold them into vector literals, which engines build anew in every turn of a loop.
 */

export let half: f32 = 0.5
/** Floats of this size hold whole numbers only: adding it rounds, and leaves the integer below. */
export let wholeFloat: f32 = 8388608
export let highestCode: i16 = 1023
