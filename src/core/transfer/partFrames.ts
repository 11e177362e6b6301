import { framesPerSecond, type Rate } from '../time/rate.ts'
import { frameFileName } from './frameFileName.ts'
import { type OutputRange, partRange } from './outputTimeline.ts'
import { isSequence, type TransferFormat } from './transferSettings.ts'

/** What a pass is cut by: how it is written, and its written frames in all. */
export type PassLength = {
  readonly settings: TransferFormat
  readonly frames: number
  readonly rate: Rate
}

const SECONDS_ALONE = 4

/**
 * Frames that lie in one file: a picture, or the stretch of a video that is encoded by itself. As
 * stretches begin on the same frames however a pass is cut into parts, all cuts give the same.
 */
const framesOfFile = ({ settings, rate }: PassLength): number =>
  isSequence(settings) ? 1 : SECONDS_ALONE * Math.max(1, Math.round(framesPerSecond(rate)))

/** The written frames of part `part` (1…`of`): whole files of it, none where there are too few. */
export const partFrames = (length: PassLength, part: number, of: number): OutputRange => {
  const each = framesOfFile(length)
  const { first, end } = partRange(Math.ceil(length.frames / each), part, of)
  const within = (files: number): number => Math.min(length.frames, files * each)
  return { first: within(first), end: within(end) }
}

/** A file of a part: its name, and the written frames in it. */
export type FileFrames = OutputRange & { readonly name: string }

/** The files that hold a range of frames, in order, each named by its first frame. */
export const filesOfFrames = (
  length: PassLength,
  stem: string,
  { first, end }: OutputRange,
): readonly FileFrames[] => {
  const each = framesOfFile(length)
  return Array.from({ length: Math.ceil((end - first) / each) }, (_, i) => {
    const at = first + i * each
    return {
      name: frameFileName(stem, at, length.settings),
      first: at,
      end: Math.min(end, at + each),
    }
  })
}
