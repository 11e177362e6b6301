import type { Planes } from '../../core/picture/planes.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import type { OnDamage } from '../../core/transfer/transferSettings.ts'
import type { FrameSource } from '../../media/frameSource.ts'
import { readDamaged } from '../readDamaged.ts'

/**
 * Frames of the scan as a pass saw them, held or refused where damaged. What is asked for is read
 * with `before` and `after` frames about it, which are kept until another place is asked for.
 */
export const createScanWindow = (
  scan: FrameSource,
  onDamage: OnDamage,
  { before, after }: { readonly before: number; readonly after: number },
) => {
  const kept = new Map<number, Planes>()
  return async (at: Frame): Promise<Planes> => {
    if (!kept.has(at)) {
      kept.clear()
      const from = frame(Math.max(0, at - before))
      const end = frame(Math.min(scan.facts.frames, at + after + 1))
      for await (const read of readDamaged(scan, { from, end, onDamage }))
        kept.set(read.frame, read.planes)
    }
    const planes = kept.get(at)
    if (!planes) throw new Error(`Bug: frame ${at} lies outside the scan`)
    return planes
  }
}
