/** The base stage: what makes video of a scan of film, and the grade after it. */

export let hasBase: i32 = 0
/** 1 where the base does more than its process list. */
export let hasFilm: i32 = 0
/** The process list after the rest of the base (see processRow.ts); 0: none. */
export let processAt: usize = 0
/** 1 where densities are mixed: then there are curves to density, sums, and curves to signal. */
export let hasDyes: i32 = 0
/** Curves (see curve.ts) of R′, G′, B′ from the scanned signal, and those after the sums. */
export let curveOfR: usize = 0
export let curveOfG: usize = 0
export let curveOfB: usize = 0
export let lastCurveOfR: usize = 0
export let lastCurveOfG: usize = 0
export let lastCurveOfB: usize = 0
/** The sums, by rows. */
export let dyeRR: f32 = 1
export let dyeRG: f32 = 0
export let dyeRB: f32 = 0
export let dyeGR: f32 = 0
export let dyeGG: f32 = 1
export let dyeGB: f32 = 0
export let dyeBR: f32 = 0
export let dyeBG: f32 = 0
export let dyeBB: f32 = 1
/** v = slope·x + lift of the grade, for rows that were decoded without it. */
export let slopeR: f32 = 1
export let slopeG: f32 = 1
export let slopeB: f32 = 1
export let afterLiftR: f32 = 0
export let afterLiftG: f32 = 0
export let afterLiftB: f32 = 0
/** 1 where the powers of the grade are to be applied after the base. */
export let isPoweredAfter: i32 = 0
