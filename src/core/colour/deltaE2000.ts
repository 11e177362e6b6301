import type { Lab } from './cieLab.ts'

const RADIAN = Math.PI / 180

/** Hue angle in radians, 0 up to 2π; 0 for a colour without chroma. */
const hueOf = (a: number, b: number): number => {
  const hue = Math.atan2(b, a)
  return hue < 0 ? hue + 2 * Math.PI : hue
}

/** √(C⁷/(C⁷ + 25⁷)): how far a chroma is from the neutral axis, 0…1. */
const saturating = (chroma: number): number => {
  const cube = chroma * chroma * chroma
  const seventh = cube * cube * chroma
  return Math.sqrt(seventh / (seventh + 25 ** 7))
}

/** Not `Math.hypot`, which is several times slower and whose care for huge numbers is not needed. */
const chromaOf = (a: number, b: number): number => Math.sqrt(a * a + b * b)

/**
 * The colour difference CIEDE2000 (CIE 142-2001), kL = kC = kH = 1, as Sharma, Wu and Dalal wrote
 * it down: Color Research and Application 30(1), 2005, pp. 21–30, equations 2–22.
 */
export const deltaE2000 = ([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number => {
  const stretch = 1 + 0.5 * (1 - saturating((chromaOf(a1, b1) + chromaOf(a2, b2)) / 2))
  const c1 = chromaOf(a1 * stretch, b1)
  const c2 = chromaOf(a2 * stretch, b2)
  const h1 = hueOf(a1 * stretch, b1)
  const h2 = hueOf(a2 * stretch, b2)
  const isGrey = c1 * c2 === 0
  const isFar = Math.abs(h2 - h1) > Math.PI
  // The way round the circle that is shorter, and the hue half way along it.
  const turn = isGrey ? 0 : h2 - h1 + (isFar ? (h2 > h1 ? -2 : 2) * Math.PI : 0)
  const wrap = isFar ? (h1 + h2 < 2 * Math.PI ? Math.PI : -Math.PI) : 0
  const hue = isGrey ? h1 + h2 : (h1 + h2) / 2 + wrap

  const l = (l1 + l2) / 2
  const c = (c1 + c2) / 2
  const t =
    1 -
    0.17 * Math.cos(hue - 30 * RADIAN) +
    0.24 * Math.cos(2 * hue) +
    0.32 * Math.cos(3 * hue + 6 * RADIAN) -
    0.2 * Math.cos(4 * hue - 63 * RADIAN)
  const fromMiddle = (l - 50) ** 2
  const dL = (l2 - l1) / (1 + (0.015 * fromMiddle) / Math.sqrt(20 + fromMiddle))
  const dC = (c2 - c1) / (1 + 0.045 * c)
  const dH = (2 * Math.sqrt(c1 * c2) * Math.sin(turn / 2)) / (1 + 0.015 * c * t)
  const blueness = Math.exp(-(((hue / RADIAN - 275) / 25) ** 2))
  const rotation = -Math.sin(60 * RADIAN * blueness) * 2 * saturating(c)
  return Math.sqrt(Math.max(0, dL * dL + dC * dC + dH * dH + rotation * dC * dH))
}
