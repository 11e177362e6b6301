import type { Planes } from '../../core/picture/planes.ts'
import type { Frame } from '../../core/time/frame.ts'
import type { PassFinding } from '../../core/transfer/passRecord.ts'

/** Looks at every frame of the reel that could be read back, in order, and tells what it found. */
export type FrameWatcher = {
  readonly add: (at: Frame, decoded: Planes) => void | Promise<void>
  readonly findings: () => readonly PassFinding[]
}
