import { execFileSync } from 'node:child_process'
import { join } from 'node:path'

/** A photograph as planes of floats: R′, G′, B′ and their luma, stretched to black and white. */
export const loadPhotograph = (folder, name) => {
  const path = join(folder, `${name}.jpg`)
  const size = execFileSync('ffprobe', [
    ...['-v', 'error', '-show_entries', 'stream=width,height', '-of', 'csv=p=0'],
    path,
  ])
  const [width, height] = size.toString().trim().split(',').map(Number)
  const bytes = execFileSync(
    'ffmpeg',
    ['-v', 'error', '-i', path, '-f', 'rawvideo', '-pix_fmt', 'rgb24', 'pipe:1'],
    { maxBuffer: 1 << 28 },
  )
  const plane = (c) =>
    Float32Array.from({ length: width * height }, (_, i) => bytes[i * 3 + c] / 255)
  const [r, g, b] = [plane(0), plane(1), plane(2)]
  const luma = r.map((value, i) => 0.2126 * value + 0.7152 * g[i] + 0.0722 * b[i])
  const sorted = Float32Array.from(luma).sort()
  const low = sorted[Math.floor(sorted.length * 0.002)]
  const high = sorted[Math.floor(sorted.length * 0.998)]
  const grey = luma.map((value) => Math.min(1, Math.max(0, (value - low) / (high - low))))
  return { width, height, r, g, b, grey }
}
