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
/** Two graded rows, three row buffers' rows apart. */
export let gradedRows: usize = 0
/** A row between two graded ones, and that row read at the delivered columns. */
export let mixedRow: usize = 0
export let framedRow: usize = 0
/** Three filtered rows. */
export let filteredRows: usize = 0

/** 1 where the picture is framed by the two tables below. */
export let isFramed: i32 = 0
/** For each delivered column: i32 bytes from a row's address, then (a plane on) f32 fractions. */
export let columnOffsets: usize = 0
export let columnFractions: usize = 0
/** For each delivered row: i32 upper and lower source row (−1: outside), f32 fraction, unused. */
export let rowPlaces: usize = 0

/** 1 where the picture is turned: then all graded rows are kept, and read by this map (f64). */
export let isTurned: i32 = 0
export let turnedRows: usize = 0
export let turnXX: f64 = 1
export let turnXY: f64 = 0
export let turnYX: f64 = 0
export let turnYY: f64 = 1
export let turnX: f64 = 0
export let turnY: f64 = 0
/** The delivered pixels that are not blanked. */
export let openLeft: i32 = 0
export let openRight: i32 = 0
export let openTop: i32 = 0
export let openBottom: i32 = 0
