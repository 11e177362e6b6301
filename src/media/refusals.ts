import { type Problem, problem } from '../core/base/problem.ts'

const WHAT_TO_DO =
  'Convert it to an image sequence (PNG or TIFF, 16 bit), or use the command line with ffmpeg installed.'

/** A container known by name that has no reader here. */
export const unreadContainer = (file: string, container: string): Problem =>
  problem('cannot-decode', `${file} is ${container}, which cannot be read here. ${WHAT_TO_DO}`, {
    file,
  })

/** A codec known by name that has no decoder here. */
export const undecodedCodec = (file: string, container: string, codec: string): Problem =>
  problem(
    'cannot-decode',
    `${file} holds ${codec} pictures in ${container}, which this browser cannot decode. ${WHAT_TO_DO}`,
    { file },
  )

/** Bytes that are no picture or video this program knows. */
export const unknownFile = (file: string): Problem =>
  problem(
    'unknown-format',
    `${file} is not a video or picture that can be read here. Give a video (MP4, MOV, MKV, WebM, TS), or PNG or TIFF pictures.`,
    { file },
  )

export const emptyFile = (file: string): Problem =>
  problem('cannot-read', `${file} is empty; get it again from where it came.`, { file })

export const damagedFile = (file: string, container: string, detail: string): Problem =>
  problem('malformed', `${file} (${container}) is damaged or cut short: ${detail}.`, { file })
