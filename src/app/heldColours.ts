import { type Grade, IDENTITY_GRADE } from '../core/colour/grade.ts'
import type { Job } from '../core/job/job.ts'
import type { HeldId } from '../core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../core/picture/framing.ts'
import type { HeldPictures, ShownFrame } from '../ui/services.ts'
import type { ColoursOf } from '../work/solveCalls.ts'

/** A held frame's picture, asked for and waited for where it is not there yet. */
const pictureOf = (held: HeldPictures, id: HeldId, signal: AbortSignal): Promise<ShownFrame> =>
  new Promise((resolve, reject) => {
    const known = held.get(id)
    if (known) {
      resolve(known)
      return
    }
    const end = () => {
      unsubscribe()
      signal.removeEventListener('abort', stop)
    }
    const stop = () => {
      end()
      reject(signal.reason)
    }
    const unsubscribe = held.subscribe(() => {
      const picture = held.get(id)
      if (!picture) return
      end()
      resolve(picture)
    })
    signal.addEventListener('abort', stop)
    held.request(id)
  })

/** The colours of a held frame, or of a still opened as a reference, and the grade it was kept with. */
export const heldColours = async (
  held: HeldPictures,
  job: Job,
  id: HeldId,
  signal: AbortSignal,
): Promise<{ readonly of: ColoursOf; readonly grade: Grade }> => {
  const { planes, coding } = await pictureOf(held, id, signal)
  const record = job.held[id]
  const framing = record?.framing ?? IDENTITY_FRAMING
  return {
    of: { kind: 'frame', frame: { planes, coding, framing } },
    grade: record?.grade ?? IDENTITY_GRADE,
  }
}
