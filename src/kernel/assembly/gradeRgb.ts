import { held } from './held'
import {
  blackCode,
  liftB,
  liftG,
  liftR,
  lumaToB,
  lumaToG,
  lumaToR,
  powerOfB,
  powerOfG,
  powerOfR,
} from './gradeSettings'
import { firstPiece4, lastPiece4, power4, table4, wholePieces4 } from './power'
import { firstPlane, rowBytes, secondPlane, thirdPlane, width } from './rasterSettings'
import { above, load4 } from './samples'
import { is, Powered } from './variants'

function gradePlane<T, P>(from: usize, out: usize, factor: f32, lift: f32, power: usize): void {
  const black = held(0, i32x4.splat(blackCode))
  const factors = held(1, f32x4.splat(factor))
  const lifts = held(2, f32x4.splat(lift))
  const table = held(3, table4(power))
  const whole = held(4, wholePieces4())
  const first = held(5, firstPiece4())
  const last = held(6, lastPiece4())
  const end = out + ((width as usize) << 2)
  for (let to = out; to < end; to += 16) {
    const level = f32x4.add(f32x4.mul(above(load4<T>(from), black), factors), lifts)
    v128.store(to, is<P, Powered>() ? power4(level, table, whole, first, last) : level)
    from += 4 * sizeof<T>()
  }
}

/** Row `y` of an R′G′B′ picture to a row buffer: `T` its samples, `P` its power. */
export function gradeRgb<T, P>(y: i32, out: usize): void {
  const row = ((y * width) as usize) * sizeof<T>()
  gradePlane<T, P>(firstPlane + row, out, lumaToR, liftR, powerOfR)
  gradePlane<T, P>(secondPlane + row, out + rowBytes, lumaToG, liftG, powerOfG)
  gradePlane<T, P>(thirdPlane + row, out + (rowBytes << 1), lumaToB, liftB, powerOfB)
}
