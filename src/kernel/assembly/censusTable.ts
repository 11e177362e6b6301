import { censusTable, isDirect, lineShift } from './censusSettings'
import { held } from './held'

/** Spreads keys over the lines of the table: 2^32 over the golden ratio. */
// @ts-ignore: decorator
@inline
const SPREAD: i32 = 0x9e3779b1 as i32
let colours: i32 = 0

/** Distinct keys in the table. */
export function censusColours(): i32 {
  return colours
}

// @ts-ignore: decorator
@inline
function tableEnd(): usize {
  return censusTable + ((1 as usize) << ((32 - lineShift + 6) as usize))
}

/**
 * Empties the table. A key's last three bits are its place in a line, so an empty slot gets a key
 * that none whose own place it is can have.
 */
export function clearCensus(): void {
  const end = tableEnd()
  colours = 0
  if (isDirect) {
    memory.fill(censusTable, 0, end - censusTable)
    return
  }
  for (let slot = censusTable; slot < end; slot += 8) {
    store<u64>(slot, ((((slot >> 3) & 7) as u64) ^ 1))
  }
}

/**
 * Adds to the counter of a key, and returns 1 where it was none. Near colours have near counters,
 * so that a noisy picture too stays in the cache where it is counted; lines spread by a hash do not.
 */
// @ts-ignore: decorator
@inline
function addDirect(key: u32, count: u32): i32 {
  const at = censusTable + ((key as usize) << 2)
  const held = load<u32>(at)
  store<u32>(at, held + count)
  return (held == 0) as i32
}

/** Adds `count` to a key, searched from `slot` on in one slot after another. */
function addFrom(slot: usize, key: u32, count: u32): void {
  const end = tableEnd()
  while (true) {
    const held = load<u64>(slot)
    // First whether it is empty: past its own place a key may be the one that marks an empty slot.
    if (held >>> 32 == 0) {
      store<u64>(slot, (key as u64) | ((count as u64) << 32))
      colours++
      return
    }
    if ((held as u32) == key) {
      store<u32>(slot, load<u32>(slot, 4) + count, 4)
      return
    }
    slot += 8
    if (slot >= end) slot = censusTable
  }
}

// @ts-ignore: decorator
@inline
function countOne(slot: usize, key: u32): void {
  if (load<u32>(slot) == key) store<u32>(slot, load<u32>(slot, 4) + 1, 4)
  else addFrom(slot, key, 1)
}

// @ts-ignore: decorator
@inline
function slotOf(key: u32): usize {
  const line = ((key >>> 3) * (SPREAD as u32)) >>> (lineShift as u32)
  return censusTable + ((line as usize) << 6) + (((key & 7) as usize) << 3)
}

/** Counts the keys (u32) from one address up to another. */
export function countKeys(from: usize, end: usize): void {
  if (isDirect) {
    // Summed apart: a global is stored and loaded again for every pixel.
    let fresh = 0
    for (; from < end; from += 4) fresh += addDirect(load<u32>(from), 1)
    colours += fresh
    return
  }
  const spread = held(0, i32x4.splat(SPREAD))
  const places = held(1, i32x4.splat(7))
  const table = held(2, i32x4.splat(censusTable as i32))
  for (; from + 16 <= end; from += 16) {
    const keys = v128.load(from)
    const lines = i32x4.shl(i32x4.shr_u(i32x4.mul(i32x4.shr_u(keys, 3), spread), lineShift), 6)
    const slots = i32x4.add(v128.or(lines, i32x4.shl(v128.and(keys, places), 3)), table)
    countOne(i32x4.extract_lane(slots, 0) as usize, i32x4.extract_lane(keys, 0))
    countOne(i32x4.extract_lane(slots, 1) as usize, i32x4.extract_lane(keys, 1))
    countOne(i32x4.extract_lane(slots, 2) as usize, i32x4.extract_lane(keys, 2))
    countOne(i32x4.extract_lane(slots, 3) as usize, i32x4.extract_lane(keys, 3))
  }
  for (; from < end; from += 4) {
    const key = load<u32>(from)
    countOne(slotOf(key), key)
  }
}

/** Adds `pairs` keys with their counts (u32, u32) from an address on. */
export function addCounts(from: usize, pairs: i32): void {
  for (let i = 0; i < pairs; i++) {
    const key = load<u32>(from)
    if (isDirect) colours += addDirect(key, load<u32>(from, 4))
    else addFrom(slotOf(key), key, load<u32>(from, 4))
    from += 8
  }
}

/** Writes all keys with their counts to an address. */
export function writeCounts(to: usize): void {
  const end = tableEnd()
  if (isDirect) {
    for (let at = censusTable; at < end; at += 4) {
      const count = load<u32>(at)
      if (count == 0) continue
      store<u32>(to, ((at - censusTable) >> 2) as u32)
      store<u32>(to, count, 4)
      to += 8
    }
    return
  }
  for (let slot = censusTable; slot < end; slot += 8) {
    if (load<u32>(slot, 4) == 0) continue
    store<u64>(to, load<u64>(slot))
    to += 8
  }
}
