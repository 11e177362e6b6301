import type { Result } from '../../core/base/result.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import type { FrameSource } from '../../media/frameSource.ts'
import type { VideoTools } from '../../media/videoTools.ts'

/** What a pass is made with where it runs. */
export type PassTools = {
  readonly openMedia: (files: readonly File[]) => Promise<Result<FrameSource>>
  readonly loadKernel: () => Promise<Kernel>
  /** Loaded only where a video is written. */
  readonly loadVideo: () => Promise<VideoTools>
  /** The browser's own storage. */
  readonly storage: () => Promise<FileSystemDirectoryHandle>
}
