/**
 * From saturated R′G′B′ to 10-bit codes: those of black and of zero chroma, and codes to 1, to 1 of
 * B′ − Y′ and to 1 of R′ − Y′.
 */
export let lumaBlack: f32 = 0
export let chromaMiddle: f32 = 0
export let codesPerLevel: f32 = 0
export let cbPerDifference: f32 = 0
export let crPerDifference: f32 = 0

/** Where the band's codes go: three tightly packed planes of u16. */
export let yCodes: usize = 0
export let cbCodes: usize = 0
export let crCodes: usize = 0

/** Whether a measured band is also kept as codes: Y′CbCr to the planes above, R′G′B′ to these. */
export let keepsCodes: i32 = 0
export let rCodes: usize = 0
export let gCodes: usize = 0
export let bCodes: usize = 0
