/** The raster, how its samples lie in memory, and where the caller put the row buffers. */

export let width: i32 = 0
export let height: i32 = 0
/** 0: chroma at half the width (4:2:0, 4:2:2). 1: Y′CbCr 4:4:4. 2: R′G′B′. */
export let layout: i32 = 0
/** 1 where the chroma has half the rows (4:2:0). */
export let isHalfHeight: i32 = 0
/** Bytes of a sample: 1 or 2. */
export let sampleBytes: i32 = 1
/** Samples in a row of the second and third plane, and rows of them. */
export let chromaColumns: i32 = 0
export let chromaRows: i32 = 0

/**
 * Where row 0 of each plane would lie: the caller copies in only the rows a band needs, so this
 * may point before them (addresses wrap).
 */
export let firstPlane: usize = 0
export let secondPlane: usize = 0
export let thirdPlane: usize = 0

/**
 * A row buffer is three rows of f32 (R′, G′, B′), `rowBytes` apart, each with MARGIN bytes before
 * its address and after its last group of eight.
 */
export let rowBytes: usize = 0
/** What chroma adds to each of R′, G′, B′, at half the width. */
export let chromaRow: usize = 0
/**
 * Graded rows, three row buffers' rows apart: row y in the (y mod `gradedCount`)th, so that as many
 * are at hand as a delivered row is read from.
 */
export let gradedRows: usize = 0
export let gradedCount: i32 = 1
/** The sum of graded rows by a delivered row's weights, and that row read at the delivered columns. */
export let mixedRow: usize = 0
export let framedRow: usize = 0
/** Three filtered rows. */
export let filteredRows: usize = 0

/** 1 where the picture is framed: by the tables below, or turned. */
export let isFramed: i32 = 0
/** Samples that a delivered one is read from across and down: multiples of 4. */
export let tapsAcross: i32 = 4
export let tapsDown: i32 = 4
/** For each delivered column: i32 bytes from a row's address, and `tapsAcross` f32 weights. */
export let columnOffsets: usize = 0
export let columnWeights: usize = 0
/** For each delivered row: i32 first graded row (-1: outside), and `tapsDown` f32 weights. */
export let rowFirsts: usize = 0
export let rowWeights: usize = 0
/** Bytes of a row, from and up to: what is read of a mixed row, and written of the framed one. */
export let mixedFrom: usize = 0
export let mixedEnd: usize = 0
export let framedFrom: usize = 0
export let framedEnd: usize = 0

/** 1 where the picture is turned: then all graded rows are kept, and read by this map (f64). */
export let isTurned: i32 = 0
export let turnedRows: usize = 0
export let turnXX: f64 = 1
export let turnXY: f64 = 0
export let turnYX: f64 = 0
export let turnYY: f64 = 1
export let turnX: f64 = 0
export let turnY: f64 = 0
/** How many times wider than between samples its filter is across and down the scan. */
export let widthAcross: f64 = 1
export let widthDown: f64 = 1
/** The delivered pixels that are not blanked. */
export let openLeft: i32 = 0
export let openRight: i32 = 0
export let openTop: i32 = 0
export let openBottom: i32 = 0
