import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { Planes } from '../core/picture/planes.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import { decodePng } from './decodePng.ts'
import { decodeTiff } from './decodeTiff.ts'
import { decodeDpx } from './dpx/decodeDpx.ts'
import { dpxFacts, type PictureFacts } from './dpx/dpxFacts.ts'
import type { FrameSource } from './frameSource.ts'
import { MediaError } from './mediaError.ts'
import { orderNumbered, sequenceName } from './numberedFiles.ts'
import { createPlanesCache } from './planesCache.ts'
import { closedSource, emptyFile, noFrame, unknownFile, unreadPicture } from './refusals.ts'
import { sniffContainer } from './sniffContainer.ts'

/** A picture file wherever it lies: its name, its size, and its bytes when they are wanted. */
export type PictureFile = {
  readonly name: string
  readonly bytes: number
  readonly load: () => Promise<Uint8Array>
}

/** PNG and TIFF state neither rate nor range. */
const NO_FACTS: PictureFacts = { rate: undefined, range: undefined, pixelAspect: 1 }

const CACHE_BYTES = 128 * 2 ** 20

type DecodedPicture = {
  readonly kind: 'PNG' | 'TIFF' | 'DPX'
  readonly planes: Planes
  readonly facts: PictureFacts
}

const decodePicture = async (bytes: Uint8Array, name: string): Promise<Result<DecodedPicture>> => {
  if (bytes.length === 0) return fail(emptyFile(name))
  const kind = sniffContainer(bytes)
  if (kind === 'DPX') {
    const picture = decodeDpx(bytes, name)
    if (!picture.ok) return picture
    const { header, planes } = picture.value
    return ok({ kind, planes, facts: dpxFacts(header) })
  }
  if (kind !== 'PNG' && kind !== 'TIFF')
    return fail(kind ? unreadPicture(name, kind) : unknownFile(name))
  const planes = await (kind === 'PNG' ? decodePng(bytes, name) : decodeTiff(bytes, name))
  return planes.ok ? ok({ kind, planes: planes.value, facts: NO_FACTS }) : planes
}

const loadPicture = async (file: PictureFile): ReturnType<typeof decodePicture> => {
  let bytes: Uint8Array
  try {
    bytes = await file.load()
  } catch {
    return fail(
      problem('cannot-read', `${file.name} cannot be read; check that it is still there.`, {
        file: file.name,
      }),
    )
  }
  return decodePicture(bytes, file.name)
}

const isAlike = (a: Planes, b: Planes): boolean =>
  a.width === b.width && a.height === b.height && a.depth === b.depth

/**
 * Numbered pictures as a reel: PNG or TIFF of 8 or 16 bits, or DPX, all of one size and depth. One
 * picture is a reel of one frame. Rate and range are stated by DPX only, and then by the first.
 */
export const openImageSequence = async (
  given: readonly PictureFile[],
): Promise<Result<FrameSource>> => {
  const ordered = orderNumbered(given)
  if (!ordered.ok) return ordered
  const files = ordered.value
  const [firstFile] = files
  if (!firstFile) return fail(problem('missing', 'There is no picture to open.'))
  const first = await loadPicture(firstFile)
  if (!first.ok) return first
  const { kind, planes, facts } = first.value
  const { pixelAspect, ...stated } = facts
  const cache = createPlanesCache(CACHE_BYTES)
  cache.put(frame(0), planes)

  const name = files.length === 1 ? firstFile.name : sequenceName(firstFile.name)
  let isClosed = false
  const read = async (wanted: Frame): Promise<Planes> => {
    if (isClosed) throw new MediaError(closedSource(name))
    const cached = cache.get(wanted)
    if (cached) return cached
    const file = files[wanted]
    if (!file) throw new MediaError(noFrame(name, wanted))
    const decoded = await loadPicture(file)
    if (!decoded.ok) throw new MediaError(decoded.problems[0])
    if (!isAlike(decoded.value.planes, planes))
      throw new MediaError(
        problem(
          'conflict',
          `${file.name} has another size or depth than ${firstFile.name}; a reel has one of each.`,
          { file: file.name, frame: wanted },
        ),
      )
    if (!isClosed) cache.put(wanted, decoded.value.planes)
    return decoded.value.planes
  }
  return ok({
    facts: {
      name,
      container: files.length === 1 ? `${kind} picture` : `${kind} sequence`,
      codec: kind,
      width: planes.width,
      height: planes.height,
      displayAspect: (pixelAspect * planes.width) / planes.height,
      depth: planes.depth,
      layout: 'rgb',
      frames: files.length,
      matrix: 'bt709',
      ...stated,
      bytes: files.reduce((sum, file) => sum + file.bytes, 0),
    },
    read,
    readRange: async function* (from, to, signal) {
      for (let at: number = from; at < Math.min(to, files.length); at++) {
        if (signal?.aborted) return
        const decoded = await read(frame(at))
        if (signal?.aborted) return
        yield { frame: frame(at), planes: decoded }
      }
    },
    close: () => {
      isClosed = true
      cache.clear()
    },
  })
}
