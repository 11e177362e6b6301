import type { Layout, MatrixName, RangeName } from '../core/picture/planes.ts'
import type { Rate } from '../core/time/rate.ts'

/** What the file itself says of the picture; undefined where it says nothing. */
export type MediaFacts = {
  readonly name: string
  /** In words: 'MP4', 'Matroska', 'PNG sequence'. */
  readonly container: string
  /** In words: 'H.264', 'VP9', 'PNG'. */
  readonly codec: string
  readonly width: number
  readonly height: number
  /** Width of the picture as shown, over its height. */
  readonly displayAspect: number
  readonly depth: number
  readonly layout: Layout
  readonly frames: number
  readonly rate: Rate | undefined
  readonly matrix: MatrixName | undefined
  readonly range: RangeName | undefined
  /** Primaries and transfer by the names of ITU-T H.273 as browsers have them. */
  readonly primaries?: string
  readonly transfer?: string
  readonly bytes: number
  /** What the file says its levels are, where it says that they are printing density. */
  readonly scanHint?: 'printing-density'
  /** Timecode of the first frame, hours:minutes:seconds:frames, where the file states one. */
  readonly startTimecode?: string
}
