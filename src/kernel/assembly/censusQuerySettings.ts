/** The census that is asked, laid out as `core/census/censusData.ts` has it. */
export let censusLevels: usize = 0
export let censusCounts: usize = 0
export let censusKeys: i32 = 0
/** 1 where a key is a box: six levels, not three. */
export let isBoxed: i32 = 0
/** For each level of boxes: addresses of boxes and of pixels, and their number (u32). */
export let censusBoxes: usize = 0

/** What it is asked: curves and errors, figures' weights, and low and high of each figure (f64). */
export let curvesAt: usize = 0
export let weightsAt: usize = 0
export let limitsAt: usize = 0
/** 4, or with luma, U and V of the composite signal 7. */
export let figureCount: i32 = 4

/** Where places of colours that are too near a limit go, and how many at most. */
export let openKeys: usize = 0
export let openLimit: i32 = 0
