import type { PassPlan } from './passPlan.ts'

/** Colour of a video as ITU-T H.273 names it, in the words that ffmpeg and browsers share. */
export type VideoTags = {
  readonly matrix: string
  readonly primaries: string
  readonly transfer: string
}

/** The tags of what a plan writes, by the reel's luma equation and, of BT.601, its lines. */
export const videoTags = ({ reel }: PassPlan): VideoTags => {
  const { matrix, height } = reel.media
  if (matrix === 'bt709') return { matrix: 'bt709', primaries: 'bt709', transfer: 'bt709' }
  if (matrix === 'bt2020')
    return { matrix: 'bt2020-ncl', primaries: 'bt2020', transfer: 'bt2020-10' }
  return height > 486
    ? { matrix: 'bt470bg', primaries: 'bt470bg', transfer: 'smpte170m' }
    : { matrix: 'smpte170m', primaries: 'smpte170m', transfer: 'smpte170m' }
}

/** Names of one and the same curve: H.273 table 3, values 1, 6, 14 and 15. */
const SAME = new Set(['bt709', 'smpte170m', 'bt2020-10', 'bt2020-12'])

export const sameCurve = (a: string | undefined, b: string): boolean =>
  a === b || (a !== undefined && SAME.has(a) && SAME.has(b))
