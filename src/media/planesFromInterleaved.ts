import type { Planes, Samples } from '../core/picture/planes.ts'

/**
 * Samples that lie pixel by pixel → three planes. Fewer than three channels are grey (one, or one
 * with alpha); a fourth is alpha and left out.
 */
export const planesFromInterleaved = (
  data: Samples,
  width: number,
  height: number,
  channels: number,
  depth: number,
): Planes => {
  const plane = (channel: number): Samples => {
    const out = depth > 8 ? new Uint16Array(width * height) : new Uint8Array(width * height)
    for (let i = 0; i < out.length; i++) out[i] = data[i * channels + channel] ?? 0
    return out
  }
  const first = plane(0)
  const samples =
    channels < 3 ? ([first, first, first] as const) : ([first, plane(1), plane(2)] as const)
  return { width, height, layout: 'rgb', depth, samples }
}
