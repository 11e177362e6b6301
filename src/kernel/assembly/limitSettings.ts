/** The limiter: see core/tolerance/limiter.ts. A range is from `…From` to `…To` before its knees. */

export let isLimited: i32 = 0

export let limitsRgb: i32 = 0
export let rgbFrom: f32 = 0
export let rgbTo: f32 = 0
export let rgbKnee: f32 = 0

export let limitsLuma: i32 = 0
export let redOfLimitedLuma: f32 = 0
export let greenOfLimitedLuma: f32 = 0
export let blueOfLimitedLuma: f32 = 0
export let lumaFrom: f32 = 0
export let lumaTo: f32 = 0
export let lumaKnee: f32 = 0

export let limitsComposite: i32 = 0
/** The limits themselves: where the knee begins depends on the colour. */
export let leastPeak: f32 = 0
export let mostPeak: f32 = 0
export let peakKnee: f32 = 0

/** Greys that are inside every limit. */
export let darkestGrey: f32 = 0
export let lightestGrey: f32 = 1

/** A pixel of which a level moved by more is counted. */
export let leastMove: f32 = 0
