import type { Planes } from '../../src/core/picture/planes.ts'
import { type Frame, frame } from '../../src/core/time/frame.ts'
import type { FrameSource } from '../../src/media/frameSource.ts'
import { MediaError } from '../../src/media/mediaError.ts'
import type { MediaFacts } from '../../src/media/mediaFacts.ts'

/** A source of pictures made by a function; frames in `damaged` cannot be decoded. */
export const madeSource = (
  facts: MediaFacts,
  picture: (at: number) => Planes,
  damaged: ReadonlySet<number> = new Set(),
): FrameSource => {
  const read = async (at: Frame): Promise<Planes> => {
    if (damaged.has(at))
      throw new MediaError({
        code: 'cannot-decode',
        says: `Frame ${at} of ${facts.name} cannot be decoded.`,
        at: { file: facts.name, frame: at },
      })
    return picture(at)
  }
  return {
    facts,
    read,
    readRange: async function* (from, to, signal) {
      for (let at: number = from; at < Math.min(to, facts.frames); at++) {
        if (signal?.aborted) return
        yield { frame: frame(at), planes: await read(frame(at)) }
      }
    },
    close: () => {},
  }
}
