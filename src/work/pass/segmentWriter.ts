import type { PartFile } from '../../core/transfer/partManifest.ts'

/** What takes the pictures of one segment. */
export type SegmentWriter = {
  readonly add: (bytes: Uint8Array<ArrayBuffer>, at: number) => Promise<void>
  /** The files of the segment, once they are whole; coded video is kept with its record. */
  readonly finish: () => Promise<{ readonly files: readonly PartFile[]; readonly video?: Blob }>
  readonly abandon: () => Promise<void>
}
