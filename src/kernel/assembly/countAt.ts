/** Adds one to the u32 counter at an address. */
// @ts-ignore: decorator
@inline
export function countAt(address: usize): void {
  store<u32>(address, load<u32>(address) + 1)
}

/** Adds one to each of the counters at four addresses, which may be alike. */
// @ts-ignore: decorator
@inline
export function countAt4(addresses: v128): void {
  const first = i64x2.extract_lane(addresses, 0)
  const second = i64x2.extract_lane(addresses, 1)
  countAt(first as usize)
  countAt((first >>> 32) as usize)
  countAt(second as usize)
  countAt((second >>> 32) as usize)
}

/** The same for u16 counters. */
// @ts-ignore: decorator
@inline
export function countShortAt(address: usize): void {
  store<u16>(address, load<u16>(address) + 1)
}

// @ts-ignore: decorator
@inline
export function countShortAt4(addresses: v128): void {
  const first = i64x2.extract_lane(addresses, 0)
  const second = i64x2.extract_lane(addresses, 1)
  countShortAt((first as u32) as usize)
  countShortAt((first >>> 32) as usize)
  countShortAt((second as u32) as usize)
  countShortAt((second >>> 32) as usize)
}
