import { codeMask, gradedB, gradedG, gradedR } from './gradeSettings'
import { held } from './held'
import { firstPlane, rowBytes, secondPlane, thirdPlane, width } from './rasterSettings'
import { load4 } from './samples'

// @ts-ignore: decorator
@inline
function gradePlane<T>(from: usize, out: usize, graded: usize): void {
  const mask = held(0, i32x4.splat(codeMask))
  const table = held(1, i32x4.splat(graded as i32))
  const end = out + ((width as usize) << 2)
  for (let to = out; to < end; to += 16) {
    const at = i32x4.add(i32x4.shl(v128.and(load4<T>(from), mask), 2), table)
    const at01 = i64x2.extract_lane(at, 0)
    const at23 = i64x2.extract_lane(at, 1)
    let levels = v128.load32_zero((at01 as u32) as usize)
    levels = v128.load32_lane((at01 >>> 32) as usize, levels, 1)
    levels = v128.load32_lane((at23 as u32) as usize, levels, 2)
    levels = v128.load32_lane((at23 >>> 32) as usize, levels, 3)
    v128.store(to, levels)
    from += 4 * sizeof<T>()
  }
}

/** Row `y` of an R′G′B′ picture to a row buffer: the graded level of every code is in a table. */
export function gradeByCode<T>(y: i32, out: usize): void {
  const row = ((y * width) as usize) * sizeof<T>()
  gradePlane<T>(firstPlane + row, out, gradedR)
  gradePlane<T>(secondPlane + row, out + rowBytes, gradedG)
  gradePlane<T>(thirdPlane + row, out + (rowBytes << 1), gradedB)
}
