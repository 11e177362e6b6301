import { rowBytes, width } from './rasterSettings'

// @ts-ignore: decorator
@inline
function scaled4(vector: v128, part: f32): v128 {
  return f32x4.mul(vector, f32x4.splat(part))
}

/** Places along an edge from the first, held at both faces; what is not a number is at the first. */
// @ts-ignore: decorator
@inline
function placeOf(at: usize, last: f32): f32 {
  const place = load<f32>(at) * last
  return place > 0 ? min(place, last) : 0
}

// @ts-ignore: decorator
@inline
function alongBlue(at: usize, part: f32): v128 {
  return f32x4.add(scaled4(v128.load(at), 1 - part), scaled4(v128.load(at, 16), part))
}

// @ts-ignore: decorator
@inline
function alongGreen(at: usize, step: usize, green: f32, blue: f32): v128 {
  return f32x4.add(
    scaled4(alongBlue(at, blue), 1 - green),
    scaled4(alongBlue(at + step, blue), green),
  )
}

/** `step` where it holds, else 0, without a jump: colours lie in no order that could be foretold. */
// @ts-ignore: decorator
@inline
function stepIf(holds: bool, step: usize): usize {
  return step & (0 - (holds as usize))
}

// @ts-ignore: decorator
@inline
function rise4(at: usize, step: usize): v128 {
  return f32x4.sub(v128.load(at + step), v128.load(at))
}

/**
 * Between four places, as `applyCubeStep`: along each axis the rise from where the axes with a
 * longer part of the way lead. Of equal parts red comes before green, and both before blue.
 */
// @ts-ignore: decorator
@inline
function tetrahedral(at: usize, red: usize, green: usize, r: f32, g: f32, b: f32): v128 {
  const blue: usize = 16
  const isGreenFirst = g > r
  const isBlueBeforeRed = b > r
  const isBlueBeforeGreen = b > g
  const ofRed = at + stepIf(isGreenFirst, green) + stepIf(isBlueBeforeRed, blue)
  const ofGreen = at + stepIf(!isGreenFirst, red) + stepIf(isBlueBeforeGreen, blue)
  const ofBlue = at + stepIf(!isBlueBeforeRed, red) + stepIf(!isBlueBeforeGreen, green)
  const alongRed = f32x4.add(v128.load(at), scaled4(rise4(ofRed, red), r))
  const alongOthers = f32x4.add(
    scaled4(rise4(ofGreen, green), g),
    scaled4(rise4(ofBlue, blue), b),
  )
  return f32x4.add(alongRed, alongOthers)
}

/** A row buffer through the cube at `table`: a vector for each of `places`³, blue fastest. */
export function cubeRow(row: usize, table: usize, places: f32, isTrilinear: bool): void {
  const count = places as usize
  const green = count << 4
  const red = count * green
  const last = places - 1
  const end = row + ((width as usize) << 2)
  for (let at = row; at < end; at += 4) {
    const r = placeOf(at, last)
    const g = placeOf(at + rowBytes, last)
    const b = placeOf(at + 2 * rowBytes, last)
    const r0 = min(r as i32, (count as i32) - 2)
    const g0 = min(g as i32, (count as i32) - 2)
    const b0 = min(b as i32, (count as i32) - 2)
    const from = table + (r0 as usize) * red + (g0 as usize) * green + ((b0 as usize) << 4)
    const pr = r - (r0 as f32)
    const pg = g - (g0 as f32)
    const pb = b - (b0 as f32)
    const colour = isTrilinear
      ? f32x4.add(
          scaled4(alongGreen(from, green, pg, pb), 1 - pr),
          scaled4(alongGreen(from + red, green, pg, pb), pr),
        )
      : tetrahedral(from, red, green, pr, pg, pb)
    store<f32>(at, f32x4.extract_lane(colour, 0))
    store<f32>(at + rowBytes, f32x4.extract_lane(colour, 1))
    store<f32>(at + 2 * rowBytes, f32x4.extract_lane(colour, 2))
  }
}
