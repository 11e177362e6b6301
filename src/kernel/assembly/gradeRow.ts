import { baseRow } from './baseRow'
import { hasBase } from './baseSettings'
import { grade444 } from './grade444'
import { gradeByCode } from './gradeByCode'
import { gradeRgb } from './gradeRgb'
import { isLinear, isTabled } from './gradeSettings'
import { gradeSubsampled } from './gradeSubsampled'
import { layout, sampleBytes } from './rasterSettings'
import { Linear, Powered } from './variants'

// @ts-ignore: decorator
@inline
function gradeSamples<T, P>(y: i32, out: usize): void {
  if (layout == 0) gradeSubsampled<T, P>(y, out)
  else if (layout == 1) grade444<T, P>(y, out)
  else gradeRgb<T, P>(y, out)
}

/**
 * Row `y` of the source through base, lift, gamma and gain (saturation comes later) to a row
 * buffer. With a base the settings of the samples decode only, and the grade comes after it.
 */
export function gradeRow(y: i32, out: usize): void {
  if (hasBase) {
    if (sampleBytes == 1) gradeSamples<u8, Linear>(y, out)
    else gradeSamples<u16, Linear>(y, out)
    baseRow(out)
  } else if (isTabled) {
    if (sampleBytes == 1) gradeByCode<u8>(y, out)
    else gradeByCode<u16>(y, out)
  } else if (sampleBytes == 1) {
    if (isLinear) gradeSamples<u8, Linear>(y, out)
    else gradeSamples<u8, Powered>(y, out)
  } else {
    if (isLinear) gradeSamples<u16, Linear>(y, out)
    else gradeSamples<u16, Powered>(y, out)
  }
}
