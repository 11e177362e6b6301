/** How a colour census packs a colour into a key, and where its table lies. */

/** Bits that are dropped from a component: the first (Y′ or R′), the other two. */
export let firstDrop: i32 = 0
export let otherDrop: i32 = 0
/**
 * A key holds, from the top, the three components without their last bits, and then these three
 * bits: how far up the first and the second component stand.
 */
export let firstShift: i32 = 0
export let secondShift: i32 = 0

/** Two rows of i32 for chroma between the lines, and one of keys, with 64 bytes after each. */
export let chromaLines: usize = 0
export let chromaLineBytes: usize = 0
export let keyRow: usize = 0

/** 2^(32 − lineShift) lines of eight slots; a slot is a key and its count (u32). Aligned to 64. */
export let censusTable: usize = 0
export let lineShift: i32 = 0
/** 1 where there is room for every key there may be: then the table is counts (u32) by key. */
export let isDirect: i32 = 0
