/** The cells whose means are wanted of a delivered picture. */

/** Cells across; 0 where none are wanted. */
export let cellColumns: i32 = 0
/** Cells in the picture. */
export let cellCount: i32 = 0
/** Byte offset in a row where each cell begins, and where the last ends (i32). */
export let cellStarts: usize = 0
/** For each row of cells, the delivered row after its last (i32). */
export let cellRowEnds: usize = 0
/** Four lanes each of R′, G′ and B′ (f32) for every cell of the row of cells at hand. */
export let cellLanes: usize = 0
/** Four masks of four lanes, for none to three levels (i32). */
export let laneMasks: usize = 0
/** Sums of R′, then G′, then B′ of all cells (f32), before saturation. */
export let cellSums: usize = 0
