import type { Problem } from '../core/base/problem.ts'
import type { Planes } from '../core/picture/planes.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import type { OnDamage } from '../core/transfer/transferSettings.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { MediaError } from '../media/mediaError.ts'

/** A frame, and what was wrong with it where the one before is shown in its place. */
export type ReadFrame = {
  readonly frame: Frame
  readonly planes: Planes
  readonly damage: Problem | undefined
}

/** The last frame before `before` that can be decoded; the first after it where there is none. */
const nearestWhole = async (source: FrameSource, before: number): Promise<Planes> => {
  const places = [
    ...Array.from({ length: before }, (_, i) => before - 1 - i),
    ...Array.from({ length: source.facts.frames - before - 1 }, (_, i) => before + 1 + i),
  ]
  let last: unknown
  for (const at of places)
    try {
      return await source.read(frame(at))
    } catch (error) {
      if (!(error instanceof MediaError)) throw error
      last = error
    }
  throw last
}

/**
 * Frames `from` up to and not including `end`, each of them once. One that cannot be decoded ends
 * the reading with its `MediaError` ('stop'), or shows the last whole frame before it ('hold'),
 * the same whichever frame the reading began with.
 */
export async function* readDamaged(
  source: FrameSource,
  { from, end, onDamage }: { from: Frame; end: Frame; onDamage: OnDamage },
  signal?: AbortSignal,
): AsyncGenerator<ReadFrame> {
  let next: number = from
  let last: Planes | undefined
  while (next < end) {
    try {
      for await (const read of source.readRange(frame(next), end, signal)) {
        last = read.planes
        next = read.frame + 1
        yield { ...read, damage: undefined }
      }
      signal?.throwIfAborted()
      if (next < end)
        throw new MediaError({
          code: 'cannot-decode',
          says: `${source.facts.name} ends before frame ${next}; the job counts on more.`,
          at: { file: source.facts.name, frame: next },
        })
    } catch (error) {
      if (!(error instanceof MediaError) || onDamage === 'stop') throw error
      last ??= await nearestWhole(source, next)
      yield { frame: frame(next), planes: last, damage: error.problem }
      next++
    }
  }
}
