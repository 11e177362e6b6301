/**
 * From code values to the levels before the power stage: v = luma·lumaTo + chroma·chromaTo + lift,
 * with the slope of the grade inside the factors. For R′G′B′ sources `lumaTo` acts on each plane.
 */

/** Codes of black and of zero chroma; the latter in quarter codes where chroma is interpolated. */
export let blackCode: i32 = 0
export let chromaZeroCode: i32 = 0

export let lumaToR: f32 = 0
export let lumaToG: f32 = 0
export let lumaToB: f32 = 0
export let crToR: f32 = 0
export let cbToG: f32 = 0
export let crToG: f32 = 0
export let cbToB: f32 = 0
export let liftR: f32 = 0
export let liftG: f32 = 0
export let liftB: f32 = 0

/** 1 where all three powers are 1. */
export let isLinear: i32 = 0
/** Power tables (see power.ts) of R′, G′, B′. */
export let powerOfR: usize = 0
export let powerOfG: usize = 0
export let powerOfB: usize = 0

/** 1 where the samples are R′G′B′ of so few bits that the graded level of each code is in a table. */
export let isTabled: i32 = 0
/** The bits of a code, and the tables of R′, G′, B′ (f32). */
export let codeMask: i32 = 0
export let gradedR: usize = 0
export let gradedG: usize = 0
export let gradedB: usize = 0
