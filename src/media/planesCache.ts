import type { Planes } from '../core/picture/planes.ts'
import type { Frame } from '../core/time/frame.ts'

/** The most recently used frames, up to a size in bytes. */
export type PlanesCache = {
  readonly get: (frame: Frame) => Planes | undefined
  readonly put: (frame: Frame, planes: Planes) => void
  readonly clear: () => void
}

/** Bytes of memory a picture's samples take. */
export const planesBytes = ({ samples }: Planes): number =>
  samples.reduce((sum, plane) => sum + plane.byteLength, 0)

export const createPlanesCache = (limit: number): PlanesCache => {
  const kept = new Map<Frame, Planes>()
  let bytes = 0
  const drop = (frame: Frame): void => {
    const planes = kept.get(frame)
    if (!planes) return
    bytes -= planesBytes(planes)
    kept.delete(frame)
  }
  return {
    get: (frame) => {
      const planes = kept.get(frame)
      if (planes) {
        kept.delete(frame)
        kept.set(frame, planes)
      }
      return planes
    },
    put: (frame, planes) => {
      drop(frame)
      kept.set(frame, planes)
      bytes += planesBytes(planes)
      for (const oldest of kept.keys()) {
        if (bytes <= limit || kept.size === 1) break
        drop(oldest)
      }
    },
    clear: () => {
      kept.clear()
      bytes = 0
    },
  }
}
