import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { buildForNode } from './buildForNode.mjs'
import { FRAMES, ffmpegTime, HEIGHT, RGB_GRADE, raw, TO_NARROW, WIDTH } from './kernelRows.mjs'

const MEMORY = existsSync('/dev/shm') ? '/dev/shm' : undefined
const PIXELS = WIDTH * HEIGHT
const WORD_BYTES = 4 * PIXELS

const planesOf = (file) => {
  const bytes = readFileSync(file)
  return Array.from({ length: FRAMES }, (_, i) => {
    const from = (i * PIXELS * 3) / 2
    const luma = from + PIXELS
    const chroma = luma + PIXELS / 4
    const samples = [
      bytes.subarray(from, luma),
      bytes.subarray(luma, chroma),
      bytes.subarray(chroma, chroma + PIXELS / 4),
    ].map((plane) => new Uint8Array(plane))
    return { width: WIDTH, height: HEIGHT, layout: '420', depth: 8, samples }
  })
}

/** The rows of laying graded 8-bit 4:2:0 out for files, one thread each. */
export const deliverRows = async (root, folder, clip) => {
  const { deliverTimes } = await import(await buildForNode(root, folder, 'deliverBench'))
  const file = join(MEMORY ?? folder, 'reelwright-bench-420.raw')
  try {
    raw(clip, 'yuv420p', 'null', file)
    const ours = await deliverTimes(root, planesOf(file))
    const toRgb = 'zscale=matrix=gbr:range=full:matrixin=709:rangein=limited,format=gbrp10le'
    const theirs = {
      words: ffmpegTime(file, 'yuv420p', `${toRgb},${RGB_GRADE},format=gbrp10be`),
      planes: ffmpegTime(file, 'yuv420p', `${toRgb},${RGB_GRADE},${TO_NARROW},format=yuv420p`),
    }
    const row = (name, own, other) => ({
      row: `deliver: grade 8-bit 4:2:0 at 1080p to ${name}`,
      reference: 'ffmpeg, the same chain of filters',
      result: `${(other / own).toFixed(1)} × (${own.toFixed(1)} against ${other.toFixed(1)} ms a frame)`,
      goal: 'at least 1.5 ×',
      isMet: other / own >= 1.5,
    })
    const times = (own) => (own / ours.copy).toFixed(0)
    return [
      row('words of 10 bits', ours.words, theirs.words),
      row('planes of 8-bit 4:2:0', ours.planes, theirs.planes),
      {
        row: 'deliver: words of 10 bits against a copy of as many bytes',
        reference: `copying ${(WORD_BYTES / 1e6).toFixed(1)} MB`,
        result: `${times(ours.words)} ×; limited softly ${times(ours.limited)} ×; 16 bits ${times(ours.rgb16)} ×`,
        goal: 'at most 18 ×',
        isMet: ours.words / ours.copy <= 18,
      },
    ]
  } finally {
    rmSync(file, { force: true })
  }
}
