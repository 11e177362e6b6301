import { countAt, countAt4 } from './countAt'
import { held } from './held'

/** The bits of a 10-bit code that tell its level of 256, in bytes of a counter. */
// @ts-ignore: decorator
@inline
const LEVEL: i32 = 0x3fc

/**
 * Adds `count` codes (u16) to four tables of 256 counters (u32), one after another: codes side by
 * side go to different tables, so that like ones need not wait for each other.
 */
export function countLevels(codes: usize, count: i32, counters: usize): void {
  const level = held(0, i32x4.splat(LEVEL))
  const at = counters as i32
  const tables = held(
    1,
    i32x4.replace_lane(
      i32x4.replace_lane(i32x4.replace_lane(i32x4.splat(at), 1, at + 1024), 2, at + 2048),
      3,
      at + 3072,
    ),
  )
  const end = codes + ((count as usize) << 1)
  for (; codes + 8 <= end; codes += 8) {
    countAt4(i32x4.add(v128.and(v128.load_ext<u16>(codes), level), tables))
  }
  for (; codes < end; codes += 2) countAt(counters + ((load<u16>(codes) as usize) & LEVEL))
}
