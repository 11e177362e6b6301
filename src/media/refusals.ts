import { type Problem, problem } from '../core/base/problem.ts'

const WHAT_TO_DO =
  'Read it at the command line, which uses ffmpeg, or convert it to an image sequence (DPX, or PNG or TIFF of 16 bits).'

/** A container known by name that has no reader here, and the codec inside where it is known. */
export const unreadContainer = (file: string, container: string, codec?: string): Problem =>
  problem(
    'cannot-decode',
    codec === undefined
      ? `${file} is ${container}, which this browser cannot read. ${WHAT_TO_DO}`
      : `${file} holds ${codec} pictures in ${container}, which this browser cannot read. ${WHAT_TO_DO}`,
    { file },
  )

/** A kind of picture file that is not read. */
export const unreadPicture = (file: string, kind: string): Problem =>
  problem(
    'cannot-decode',
    `${file} is ${kind}, which is not read here. Convert it to DPX, PNG or TIFF.`,
    {
      file,
    },
  )

/** A file that shows several stretches of its track, one after another. */
export const editedFile = (file: string, stretches: number): Problem =>
  problem(
    'cannot-decode',
    `${file} is put together from ${stretches} stretches by an edit list, which this browser cannot follow. ${WHAT_TO_DO}`,
    { file },
  )

/** A codec known by name that has no decoder here. */
export const undecodedCodec = (file: string, container: string, codec: string): Problem =>
  problem(
    'cannot-decode',
    `${file} holds ${codec} pictures in ${container}, which this browser cannot decode. ${WHAT_TO_DO}`,
    { file },
  )

/** A container that opens but has no video track that is understood. */
export const noPictures = (file: string, container: string): Problem =>
  problem(
    'cannot-decode',
    `${file} (${container}) has no video track that can be read here. ${WHAT_TO_DO}`,
    { file },
  )

/** Bytes that are no picture or video this program knows. */
export const unknownFile = (file: string): Problem =>
  problem(
    'unknown-format',
    `${file} is not a video or picture that can be read here. Give a video (MP4, MOV, MKV, WebM, TS), or DPX, PNG or TIFF pictures.`,
    { file },
  )

export const emptyFile = (file: string): Problem =>
  problem('cannot-read', `${file} is empty; get it again from where it came.`, { file })

/** A file that ends before it should; `missing` is in bytes, and as many at least. */
export const cutShortFile = (file: string, container: string, missing: number): Problem =>
  problem(
    'malformed',
    `${file} (${container}) is cut short: at least ${missing} bytes are missing at its end. Get it again from where it came.`,
    { file },
  )

export const damagedFile = (file: string, container: string, detail: string): Problem =>
  problem(
    'malformed',
    `${file} (${container}) is damaged: ${detail}. Get it again from where it came.`,
    { file },
  )

/** A frame outside a reel: asked for wrongly, or of a source that has been closed. */
export const noFrame = (file: string, at: number): Problem =>
  problem('not-found', `There is no frame ${at} in ${file}.`, { file, frame: at })

export const closedSource = (file: string): Problem =>
  problem('cannot-read', `${file} was closed; open it again.`, { file })
