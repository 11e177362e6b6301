import * as v from 'valibot'
import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import type { Rate } from '../time/rate.ts'
import { filesOfFrames, partFrames } from './partFrames.ts'
import { TRANSFER_FORMATS, type TransferFormat } from './transferSettings.ts'
import type { VideoTags } from './videoTags.ts'

/** One file of a part: its name in the part's folder, and what it holds. */
export type PartFile = { readonly name: string; readonly bytes: number; readonly sha256: string }

/** What a part of a pass says of itself, beside its files. */
export type PartManifest = {
  readonly format: 'reelwright-part'
  readonly version: 1
  /** SHA-256 of all that decides what a part holds: parts of one pass have it alike. */
  readonly identity: string
  readonly settings: TransferFormat
  /** Version of the program that made it. */
  readonly program: string
  /** What encoded a video, with its version: pieces of one video have it alike. '' for pictures. */
  readonly encoder: string
  /** The colour that a video states. */
  readonly tags: VideoTags | null
  /** What the names of its files begin with. */
  readonly stem: string
  readonly part: number
  readonly of: number
  /** Written frames `first` up to and not including `end`, of `frames` in all. */
  readonly first: number
  readonly end: number
  readonly frames: number
  /** Those of them before the reel. */
  readonly headFrames: number
  readonly rate: Rate
  /** Of the first written frame of all. */
  readonly timecode: string
  /** In order of their frames. */
  readonly files: readonly PartFile[]
  /** The scan's own sound, with the first part of a video: when it begins against the reel. */
  readonly sound: (PartFile & { readonly startsAt: number; readonly codec: string }) | null
  /** What became of the sound where none goes along; '' where it does. */
  readonly noSound: string
  /** Frames of the reel that show the one before, and why. */
  readonly held: readonly { readonly frame: number; readonly says: string }[]
  readonly limitedPixels: number
  readonly limitedFrames: number
  readonly clippedPixels: number
}

/** Names that lie in the part's own folder: no paths. */
const fileName = v.pipe(v.string(), v.regex(/^[\w][\w.-]{0,199}$/u))
const whole = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(Number.MAX_SAFE_INTEGER))
const sha256 = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/u))
const words = v.pipe(v.string(), v.maxLength(4000))
const tag = v.pipe(v.string(), v.regex(/^[a-z][a-z0-9-]{0,31}$/u))
const file = { name: fileName, bytes: whole, sha256 }

const manifestSchema = v.strictObject({
  format: v.literal('reelwright-part'),
  version: v.literal(1),
  identity: sha256,
  settings: v.picklist(TRANSFER_FORMATS),
  program: words,
  encoder: words,
  tags: v.nullable(v.strictObject({ matrix: tag, primaries: tag, transfer: tag })),
  stem: fileName,
  part: whole,
  of: whole,
  first: whole,
  end: whole,
  frames: whole,
  headFrames: whole,
  rate: v.strictObject({
    num: v.pipe(whole, v.minValue(1)),
    den: v.pipe(whole, v.minValue(1)),
  }),
  timecode: v.pipe(v.string(), v.regex(/^\d\d:\d\d:\d\d[:;]\d\d$/u)),
  files: v.pipe(v.array(v.strictObject(file)), v.maxLength(2_000_000)),
  sound: v.nullable(v.strictObject({ ...file, startsAt: v.number(), codec: words })),
  noSound: words,
  held: v.pipe(v.array(v.strictObject({ frame: whole, says: words })), v.maxLength(2_000_000)),
  limitedPixels: whole,
  limitedFrames: whole,
  clippedPixels: whole,
})

/** The field that does not follow from the number of the part, where there is one. */
const countedWrongly = (manifest: PartManifest): string | undefined => {
  const { part, of, first, end, stem, files } = manifest
  if (part < 1 || part > of) return 'part'
  const range = partFrames(manifest, part, of)
  if (first !== range.first || end !== range.end) return 'first'
  const named = filesOfFrames(manifest, stem, range)
  return named.length === files.length && named.every(({ name }, i) => name === files[i]?.name)
    ? undefined
    : 'files'
}

export const writePartManifest = (manifest: PartManifest): string =>
  `${JSON.stringify(manifest, undefined, 2)}\n`

/** The text of a part's manifest; refuses what is none, or names files outside the part. */
export const readPartManifest = (text: string): Result<PartManifest> => {
  const refuse = (says: string, field?: string): Result<never> =>
    fail(problem('malformed', says, field === undefined ? undefined : { field }))
  let parsed: unknown
  try {
    parsed = JSON.parse(text)
  } catch {
    return refuse('This is no manifest of a part, or not a whole one; make the part again.')
  }
  const read = v.safeParse(manifestSchema, parsed)
  if (!read.success) {
    const field = read.issues[0].path?.map(({ key }) => String(key)).join('.') ?? ''
    return refuse(`The manifest of the part is not right at “${field}”; make it again.`, field)
  }
  const wrong = countedWrongly(read.output)
  return wrong === undefined
    ? ok(read.output)
    : refuse('The manifest of the part counts wrongly; make the part again.', wrong)
}
