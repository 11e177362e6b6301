import { spawn } from 'node:child_process'
import type { MatrixName } from '../../core/picture/planes.ts'
import type { Still } from '../../core/picture/still.ts'
import { dataAddress } from '../dataAddress.ts'
import { displayBytes } from '../displayBytes.ts'
import { pngDataUri } from '../pngDataUri.ts'

/** ffmpeg's scale of JPEG quality, 2 (best) to 31: about what 0.9 is in a browser. */
const QUALITY = '3'

/** Some bytes through ffmpeg; undefined where it is not there or refuses. */
const throughFfmpeg = (
  args: readonly string[],
  input: Uint8Array,
): Promise<Uint8Array | undefined> =>
  new Promise((resolve) => {
    const child = spawn('ffmpeg', ['-v', 'error', '-nostdin', ...args], {
      stdio: ['pipe', 'pipe', 'ignore'],
    })
    const pieces: Uint8Array[] = []
    child.stdout.on('data', (piece: Uint8Array) => pieces.push(piece))
    child.once('error', () => resolve(undefined))
    child.once('close', (status) => resolve(status === 0 ? Buffer.concat(pieces) : undefined))
    child.stdin.on('error', () => {})
    child.stdin.end(input)
  })

/** As `jpegAddress`, by ffmpeg's encoder; a PNG where there is none. */
export const jpegAddressNode = async (still: Still, matrix: MatrixName): Promise<string> => {
  const { width, height } = still
  const raw = ['-f', 'rawvideo', '-pix_fmt', 'rgb24', '-s', `${width}x${height}`, '-i', 'pipe:0']
  const made = [
    '-c:v',
    'mjpeg',
    '-q:v',
    QUALITY,
    '-pix_fmt',
    'yuvj444p',
    '-f',
    'image2pipe',
    'pipe:1',
  ]
  const jpeg = await throughFfmpeg([...raw, ...made], displayBytes(still, matrix))
  return jpeg && jpeg.length > 0 ? dataAddress('image/jpeg', jpeg) : pngDataUri(still, matrix)
}
