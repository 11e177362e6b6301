/** The census that is asked, laid out as `core/census/censusData.ts` has it. */
export let censusLevels: usize = 0
export let censusCounts: usize = 0
export let censusKeys: i32 = 0
/** 1 where a key is a box: six levels, not three. */
export let isBoxed: i32 = 0
/** For each level of boxes: addresses of boxes and of pixels, and their number (u32). */
export let censusBoxes: usize = 0

/** What it is asked, as `kernel/censusQuestions.ts` lays it out (f32): see `censusBounds.ts`. */
export let curvesAt: usize = 0
export let weightsAt: usize = 0
export let limitsAt: usize = 0
/** 1 where the peaks of the composite signal are limited. */
export let hasPeaks: i32 = 0

/** Where places of colours that bounds cannot settle go, and how many at most. */
export let openKeys: usize = 0
export let openLimit: i32 = 0
/** Where the ends of the figures go: low and high of R′, G′, B′, Y′, then of the two peaks (f32). */
export let endsAt: usize = 0
