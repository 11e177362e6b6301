/**
 * The cubic convolution kernel of Keys with a = −1/2 at `x` sample distances from its middle: 1
 * there, 0 at every other whole distance and from 2 on. Source: R. G. Keys, “Cubic Convolution
 * Interpolation for Digital Image Processing”, IEEE Trans. ASSP-29(6), 1981, eq. (15).
 */
export const keysCubic = (x: number): number => {
  const d = Math.abs(x)
  if (d < 1) return (1.5 * d - 2.5) * d * d + 1
  return d < 2 ? ((-0.5 * d + 2.5) * d - 4) * d + 2 : 0
}
