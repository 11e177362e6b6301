import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { Planes } from '../core/picture/planes.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import { decodePng } from './decodePng.ts'
import { decodeTiff } from './decodeTiff.ts'
import type { FrameSource } from './frameSource.ts'
import { MediaError } from './mediaError.ts'
import { numberedName, orderNumbered } from './numberedFiles.ts'
import { createPlanesCache } from './planesCache.ts'
import { unknownFile, unreadContainer } from './refusals.ts'
import { sniffContainer } from './sniffContainer.ts'

/** A picture file wherever it lies: its name, its size, and its bytes when they are wanted. */
export type PictureFile = {
  readonly name: string
  readonly bytes: number
  readonly load: () => Promise<Uint8Array>
}

const CACHE_BYTES = 128 * 2 ** 20

const decodePicture = async (
  bytes: Uint8Array,
  name: string,
): Promise<Result<{ readonly kind: 'PNG' | 'TIFF'; readonly planes: Planes }>> => {
  const kind = sniffContainer(bytes)
  if (kind !== 'PNG' && kind !== 'TIFF')
    return fail(kind ? unreadContainer(name, kind) : unknownFile(name))
  const planes = await (kind === 'PNG' ? decodePng(bytes, name) : decodeTiff(bytes, name))
  return planes.ok ? ok({ kind, planes: planes.value }) : planes
}

const isAlike = (a: Planes, b: Planes): boolean =>
  a.width === b.width && a.height === b.height && a.depth === b.depth

/** A name for a whole sequence, such as `reel_####.png`. */
const sequenceName = (files: readonly PictureFile[]): string => {
  const [first] = files
  if (!first || files.length === 1) return first?.name ?? ''
  const { before, after } = numberedName(first.name)
  return `${before}####${after}`
}

/**
 * Numbered pictures as a reel: PNG or TIFF, 8 or 16 bits, all of one size and depth. One picture
 * is a reel of one frame. The rate and the range are not stated by such files.
 */
export const openImageSequence = async (
  given: readonly PictureFile[],
): Promise<Result<FrameSource>> => {
  const ordered = orderNumbered(given)
  if (!ordered.ok) return ordered
  const files = ordered.value
  const [firstFile] = files
  if (!firstFile) return fail(problem('missing', 'There is no picture to open.'))
  const first = await decodePicture(await firstFile.load(), firstFile.name)
  if (!first.ok) return first
  const { kind, planes } = first.value
  const cache = createPlanesCache(CACHE_BYTES)
  cache.put(frame(0), planes)

  const read = async (wanted: Frame): Promise<Planes> => {
    const cached = cache.get(wanted)
    if (cached) return cached
    const file = files[wanted]
    if (!file)
      throw new MediaError(problem('not-found', `There is no frame ${wanted} in the sequence.`))
    const decoded = await decodePicture(await file.load(), file.name)
    if (!decoded.ok) throw new MediaError(decoded.problems[0])
    if (!isAlike(decoded.value.planes, planes))
      throw new MediaError(
        problem(
          'conflict',
          `${file.name} has another size or depth than ${firstFile.name}; a reel has one of each.`,
          { file: file.name, frame: wanted },
        ),
      )
    cache.put(wanted, decoded.value.planes)
    return decoded.value.planes
  }
  return ok({
    facts: {
      name: sequenceName(files),
      container: files.length === 1 ? `${kind} picture` : `${kind} sequence`,
      codec: kind,
      width: planes.width,
      height: planes.height,
      displayAspect: planes.width / planes.height,
      depth: planes.depth,
      layout: 'rgb',
      frames: files.length,
      rate: undefined,
      matrix: 'bt709',
      range: undefined,
      bytes: files.reduce((sum, file) => sum + file.bytes, 0),
    },
    read,
    readRange: async function* (from, to, signal) {
      for (let at: number = from; at < Math.min(to, files.length); at++) {
        if (signal?.aborted) return
        yield { frame: frame(at), planes: await read(frame(at)) }
      }
    },
    close: cache.clear,
  })
}
