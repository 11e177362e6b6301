import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import {
  chromaHeight,
  chromaWidth,
  type Layout,
  type Planes,
  type Samples,
} from '../../src/core/picture/planes.ts'

const ROOT = join(import.meta.dirname, '../..')
const FLOAT = 'gbrpf32le'

/** ffmpeg's names of matrices and ranges, for its filter zscale. */
export const ZSCALE_MATRIX = { bt601: '170m', bt709: '709', bt2020: '2020_ncl' } as const
export const ZSCALE_RANGE = { narrow: 'limited', full: 'full' } as const

type Size = { readonly width: number; readonly height: number }

/** Planes of R′, G′, B′ in float32. */
export type FloatPlanes = Size & { readonly rgb: readonly Float32Array[] }

const formatOf = (layout: Layout, depth: number): string =>
  `${layout === 'rgb' ? 'gbrp' : `yuv${layout}p`}${depth > 8 ? `${depth}le` : ''}`

/** ffmpeg has R′G′B′ in the order G′, B′, R′. */
const fromGbr = <T>([g, b, r]: readonly T[]) => [r, g, b] as [T, T, T]
const toGbr = <T>([r, g, b]: readonly T[]) => [g, b, r] as [T, T, T]

const run = (args: readonly string[], format: string, input: readonly ArrayBufferView[] = []) => {
  const bytes = input.map((a) => new Uint8Array(a.buffer, a.byteOffset, a.byteLength))
  const out = execFileSync(
    'ffmpeg',
    ['-v', 'error', ...args, '-pix_fmt', format, '-f', 'rawvideo', '-'],
    { input: Buffer.concat(bytes), maxBuffer: 2 ** 28 },
  )
  return new Uint8Array(out)
}

const planesFrom = (
  bytes: Uint8Array,
  { width, height }: Size,
  layout: Layout,
  depth: number,
): Planes => {
  const whole: Samples = depth > 8 ? new Uint16Array(bytes.buffer) : bytes
  const luma = width * height
  const chroma = chromaWidth(layout, width) * chromaHeight(layout, height)
  if (whole.length !== luma + 2 * chroma) throw new Error(`ffmpeg gave ${whole.length} samples`)
  const planes = [
    whole.subarray(0, luma),
    whole.subarray(luma, luma + chroma),
    whole.subarray(luma + chroma),
  ] as [Samples, Samples, Samples]
  return { width, height, layout, depth, samples: layout === 'rgb' ? fromGbr(planes) : planes }
}

const rawInput = ({ width, height }: Size, format: string) =>
  ['-f', 'rawvideo', '-s', `${width}x${height}`, '-pix_fmt', format, '-i', '-'] as const

/** A frame of a file of the repository, scaled to `size`. */
export const readFrame = (
  file: string,
  size: Size,
  layout: Layout,
  depth: number,
  seconds = 0,
): Planes => {
  const seek = seconds > 0 ? ['-ss', String(seconds)] : []
  const from = [...seek, '-i', join(ROOT, file), '-frames:v', '1']
  const scaled = [...from, '-vf', `scale=${size.width}:${size.height}`]
  return planesFrom(run(scaled, formatOf(layout, depth)), size, layout, depth)
}

/** R′G′B′ samples or floats, full range, through a filter to 4:4:4 codes. */
export const encodeByFfmpeg = (
  from: Planes | FloatPlanes,
  filter: string,
  depth: number,
): Planes => {
  const [format, rgb] =
    'rgb' in from ? [FLOAT, from.rgb] : [formatOf('rgb', from.depth), from.samples]
  const args = [...rawInput(from, format), '-vf', filter]
  return planesFrom(
    run(args, formatOf('444', depth), toGbr<ArrayBufferView>(rgb)),
    from,
    '444',
    depth,
  )
}

/** Y′CbCr samples through a filter to R′, G′, B′. */
export const decodeByFfmpeg = (planes: Planes, filter: string): FloatPlanes => {
  const { width, height, layout, depth, samples } = planes
  const args = [...rawInput(planes, formatOf(layout, depth)), '-vf', filter]
  const whole = new Float32Array(run(args, FLOAT, samples).buffer)
  const count = width * height
  const gbr = [0, 1, 2].map((i) => whole.subarray(i * count, (i + 1) * count))
  return { width, height, rgb: fromGbr(gbr) }
}
