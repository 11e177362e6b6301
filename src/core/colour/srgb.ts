/**
 * sRGB signal (0…1) → linear light (0…1), IEC 61966-2-1: V/12.92 up to 0.04045, then
 * ((V + 0.055)/1.055)^2.4 (constants from memory). Below 0 it goes on along the straight part.
 */
export const srgbToLinear = (signal: number): number =>
  signal <= 0.04045 ? signal / 12.92 : ((signal + 0.055) / 1.055) ** 2.4

/** Linear light → sRGB signal, IEC 61966-2-1: 12.92·L up to 0.0031308, then the power part. */
export const linearToSrgb = (light: number): number =>
  light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055
