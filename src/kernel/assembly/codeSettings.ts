/** From graded R′G′B′ to 10-bit codes, saturation included: a 3×3 matrix and the offsets. */

export let rToY: f32 = 0
export let gToY: f32 = 0
export let bToY: f32 = 0
export let rToCb: f32 = 0
export let gToCb: f32 = 0
export let bToCb: f32 = 0
export let rToCr: f32 = 0
export let gToCr: f32 = 0
export let bToCr: f32 = 0
export let lumaBlack: f32 = 0
export let chromaMiddle: f32 = 0

/** Where the band's codes go: three tightly packed planes of u16. */
export let yCodes: usize = 0
export let cbCodes: usize = 0
export let crCodes: usize = 0

/** Whether a measured band is also kept as codes: Y′CbCr to the planes above, R′G′B′ to these. */
export let keepsCodes: i32 = 0
export let keepsRgbCodes: i32 = 0
export let rCodes: usize = 0
export let gCodes: usize = 0
export let bCodes: usize = 0
