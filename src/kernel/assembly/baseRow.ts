import {
  afterLiftB,
  afterLiftG,
  afterLiftR,
  curveOfB,
  curveOfG,
  curveOfR,
  dyeBB,
  dyeBG,
  dyeBR,
  dyeGB,
  dyeGG,
  dyeGR,
  dyeRB,
  dyeRG,
  dyeRR,
  hasDyes,
  hasFilm,
  isPoweredAfter,
  lastCurveOfB,
  lastCurveOfG,
  lastCurveOfR,
  processAt,
  slopeB,
  slopeG,
  slopeR,
} from './baseSettings'
import { curve4 } from './curve'
import { powerOfB, powerOfG, powerOfR } from './gradeSettings'
import { weighted4 } from './levels'
import { firstPiece4, lastPiece4, power4, table4, wholePieces4 } from './power'
import { processRow } from './processRow'
import { rowBytes, width } from './rasterSettings'
import { Graded, is, Ungraded } from './variants'

// @ts-ignore: decorator
@inline
function mixed4(r: v128, g: v128, b: v128, kr: f32, kg: f32, kb: f32): v128 {
  return weighted4(r, g, b, f32x4.splat(kr), f32x4.splat(kg), f32x4.splat(kb))
}

// @ts-ignore: decorator
@inline
function after4(level: v128, slope: f32, lift: f32, power: usize): v128 {
  const v = f32x4.add(f32x4.mul(level, f32x4.splat(slope)), f32x4.splat(lift))
  return isPoweredAfter ? power4(v, table4(power), wholePieces4(), firstPiece4(), lastPiece4()) : v
}

/** Scanned levels through the curves and sums of the base, and if so wanted, through the grade. */
// @ts-ignore: decorator
@inline
function filmRow<G>(row: usize): void {
  const end = row + ((width as usize) << 2)
  for (let at = row; at < end; at += 16) {
    const green = at + rowBytes
    const blue = green + rowBytes
    let r = curve4(v128.load(at), curveOfR)
    let g = curve4(v128.load(green), curveOfG)
    let b = curve4(v128.load(blue), curveOfB)
    if (hasDyes) {
      const mixedR = mixed4(r, g, b, dyeRR, dyeRG, dyeRB)
      const mixedG = mixed4(r, g, b, dyeGR, dyeGG, dyeGB)
      const mixedB = mixed4(r, g, b, dyeBR, dyeBG, dyeBB)
      r = curve4(mixedR, lastCurveOfR)
      g = curve4(mixedG, lastCurveOfG)
      b = curve4(mixedB, lastCurveOfB)
    }
    v128.store(at, is<G, Graded>() ? after4(r, slopeR, afterLiftR, powerOfR) : r)
    v128.store(green, is<G, Graded>() ? after4(g, slopeG, afterLiftG, powerOfG) : g)
    v128.store(blue, is<G, Graded>() ? after4(b, slopeB, afterLiftB, powerOfB) : b)
  }
}

function afterRow(row: usize): void {
  const end = row + ((width as usize) << 2)
  for (let at = row; at < end; at += 16) {
    const green = at + rowBytes
    const blue = green + rowBytes
    v128.store(at, after4(v128.load(at), slopeR, afterLiftR, powerOfR))
    v128.store(green, after4(v128.load(green), slopeG, afterLiftG, powerOfG))
    v128.store(blue, after4(v128.load(blue), slopeB, afterLiftB, powerOfB))
  }
}

/** A row buffer of scanned levels through the base and then lift, gamma and gain, in place. */
export function baseRow(row: usize): void {
  if (processAt == 0) {
    filmRow<Graded>(row)
    return
  }
  if (hasFilm) filmRow<Ungraded>(row)
  processRow(row)
  afterRow(row)
}
