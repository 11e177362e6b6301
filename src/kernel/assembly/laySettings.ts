/** How delivered rows are laid out in bytes: see core/transfer/deliveredForm.ts. */

/** 0: words of 10 bits. 1: R′G′B′ of 16 bits. 2: planes of Y′, Cb, Cr. */
export let layForm: i32 = 0
export let isLaidLittleEndian: i32 = 0
/** Of planes: bytes of a code, and the largest code. */
export let layBytes: i32 = 1
export let layLargest: f32 = 255
/** Of planes: 1 where chroma has half the columns, and where it has half the rows. */
export let hasHalfColumns: i32 = 0
export let hasHalfRows: i32 = 0
/** Y′ from finished R′, G′, B′. */
export let redOfLuma: f32 = 0
export let greenOfLuma: f32 = 0
export let blueOfLuma: f32 = 0

/** Where the band's bytes go: all of them, or those of Y′, Cb and Cr. */
export let firstLaid: usize = 0
export let secondLaid: usize = 0
export let thirdLaid: usize = 0

/** A row buffer for B′ − Y′ and R′ − Y′, and one for those of an upper line at half the width. */
export let differenceRow: usize = 0
export let heldRow: usize = 0

/** Four lanes each of pixels clipped and pixels limited (i32). */
export let laidCounts: usize = 0

/** An opaque grey rectangle: its place, how much of ink each pixel shows (u8), and the levels. */
export let overlayLeft: i32 = 0
export let overlayTop: i32 = 0
export let overlayWidth: i32 = 0
export let overlayHeight: i32 = 0
export let overlayCoverage: usize = 0
export let overlayInk: f32 = 0
export let overlayGround: f32 = 0
