import type { Layout } from '../../core/picture/planes.ts'

/** What ffprobe tells of one of its pixel formats. */
export type PixelFormat = {
  readonly name: string
  readonly nb_components: number
  readonly log2_chroma_w: number
  readonly log2_chroma_h: number
  readonly flags: Readonly<Record<string, number>>
  readonly components?: readonly { readonly bit_depth: number }[]
}

/** How raw pictures are asked for, and what they then are. */
export type AskedFormat = {
  readonly ask: string
  readonly layout: Layout
  readonly depth: number
  /** Luma alone; chroma planes are to be made neutral. */
  readonly isGrey: boolean
  /** Whether ffmpeg must rearrange samples. It must then be told to leave the range alone. */
  readonly isConverted: boolean
}

const DEPTHS = [8, 10, 12, 16] as const

/** Chroma as fine as the format's own, or the next finer kind there is a layout for. */
const layoutOf = ({ log2_chroma_w: w, log2_chroma_h: h }: PixelFormat): Layout => {
  if (w === 0) return '444'
  return h === 0 ? '422' : '420'
}

/**
 * The planar format nearest to one of ffmpeg's, without loss: 4:1:1 becomes 4:2:2, 4:4:0 4:4:4,
 * 9 and 14 bits 10 and 16, and alpha is left out. Undefined for what has no place here: floating
 * point and X′Y′Z′ samples, raw sensor mosaics, and pictures kept in a graphics card.
 */
export const askedFormat = (format: PixelFormat): AskedFormat | undefined => {
  const { name, flags, components = [] } = format
  const isForeign = flags.hwaccel === 1 || flags.bayer === 1 || /^(xyz|bayer)/u.test(name)
  const deepest = Math.max(...components.map(({ bit_depth }) => bit_depth))
  const depth = DEPTHS.find((each) => each >= deepest)
  if (isForeign || depth === undefined) return undefined
  const suffix = depth === 8 ? '' : `${depth}le`
  const isRgb = flags.rgb === 1 || flags.palette === 1
  const isGrey = !isRgb && format.nb_components - (flags.alpha ?? 0) === 1
  const layout = isRgb ? 'rgb' : isGrey ? '420' : layoutOf(format)
  const planar = name.startsWith('yuvj') ? `yuvj${layout}p` : `yuv${layout}p${suffix}`
  const ask = isRgb ? `gbrp${suffix}` : isGrey ? `gray${suffix}` : planar
  return { ask, layout, depth, isGrey, isConverted: ask !== name }
}
