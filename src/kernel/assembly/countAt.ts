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
