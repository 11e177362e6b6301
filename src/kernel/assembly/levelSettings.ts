/** What is measured: saturation, luma equation, filter and limits. */

/** out = saturation·c + redShare·r + greenShare·g + blueShare·b; a share is (1 − saturation)·weight. */
export let isSaturated: i32 = 0
export let saturation: f32 = 1
export let redShare: f32 = 0
export let greenShare: f32 = 0
export let blueShare: f32 = 0

/** Y′ from graded R′, G′, B′, saturation included. */
export let redInLuma: f32 = 0
export let greenInLuma: f32 = 0
export let blueInLuma: f32 = 0

export let isFiltered: i32 = 0

/** Whether the peaks of the composite signal are measured too. */
export let isComposite: i32 = 0

/** Limits, times 64 where the picture is filtered (the filter's sum is not divided out). */
export let rgbLow: f32 = 0
export let rgbHigh: f32 = 0
export let lumaLow: f32 = 0
export let lumaHigh: f32 = 0
export let compositeLow: f32 = 0
export let compositeHigh: f32 = 0

/**
 * Four lanes each of: low and high of R′, G′, B′, Y′ and composite (f32), pixels below, above, outside (i32).
 */
export let statistics: usize = 0
