import { gradeToCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'
import { foreignOf } from '../../job/foreignOf.ts'
import type { Cue, Reel } from '../../job/job.ts'
import { formatTimecode } from '../../time/timecode.ts'
import { COMMENT_WORDS, commentKind } from './edlComment.ts'
import { edlDecimal } from './edlDecimal.ts'
import { readEdlForeign } from './edlForeign.ts'
import { edlNoteLines } from './edlNote.ts'
import { cutTo, edlText, LINE_LIMIT } from './edlText.ts'

/** What an event is made of. */
export type WrittenEvent = {
  readonly reel: Reel
  /** The reel's name in event lines. */
  readonly reelName: string
  readonly cue: Cue
  /** The first frame after the cue. */
  readonly end: number
  /** Of the event in its list, and of the cue in its reel, from 1. */
  readonly number: number
  readonly cueNumber: number
}

const group = (t: Triple): string => `(${t.map(edlDecimal).join(' ')})`

const CLIP = `* ${COMMENT_WORDS.fromClip} `
const REEL_NAME = `* ${COMMENT_WORDS.reelName} `

/** Characters of a reel's name before ` CUE 0000`. */
const NAME_BEFORE_CUE = LINE_LIMIT - CLIP.length - ' CUE 00000'.length

/** A reel's name for a comment of its own; '' where it is too long, or has letters ASCII has not. */
export const fullReelName = ({ name }: Reel): string => {
  const text = edlText(name)
  const isWhole = text.length <= LINE_LIMIT - REEL_NAME.length
  return isWhole && (name.includes('?') || !text.includes('?')) ? text : ''
}

const clipName = (reel: Reel, reelName: string, cueNumber: number): string => {
  const name = cutTo(fullReelName(reel) || reelName, NAME_BEFORE_CUE)
  return `${name} CUE ${String(cueNumber).padStart(4, '0')}`
}

/** Comments of other lists again. One that now reads like a value has a word before it. */
export const commentLines = (comments: readonly string[] = []): readonly string[] =>
  comments.map(edlText).flatMap((text) => {
    if (text === '') return []
    return [commentKind(text) === undefined ? `* ${text}` : `* COMMENT: ${text}`]
  })

/** A cue's event line and the comments under it (facts/edl.md §1–2): at most 80 columns of ours. */
export const edlEventLines = ({
  reel,
  reelName,
  cue,
  end,
  number,
  cueNumber,
}: WrittenEvent): readonly string[] => {
  const label = (frame: number): string =>
    formatTimecode(reel.startCount + frame, reel.rate, reel.isDropFrame).replace(';', ':')
  const [cueIn, cueOut] = [label(cue.first), label(end)]
  const { slope, offset, power, saturation } = gradeToCdl(cue.grade)
  const earlier = readEdlForeign(foreignOf(cue.foreign, 'edl') ?? '')
  const name = edlText(earlier.name ?? '') || clipName(reel, reelName, cueNumber)
  const fullName = fullReelName(reel)
  const ramp = `${String(cue.ramp).padStart(3, '0')} FRAMES${cue.rampShape === 'eased' ? ' EASED' : ''}`
  return [
    `${String(number).padStart(3, '0')}  ${reelName.padEnd(8)} V     C        ${cueIn} ${cueOut} ${cueIn} ${cueOut}`,
    CLIP + name,
    ...(fullName === reelName || fullName === '' ? [] : [REEL_NAME + fullName]),
    `* ${COMMENT_WORDS.sop} ${group(slope)}${group(offset)}${group(power)}`,
    `* ${COMMENT_WORDS.saturation} ${edlDecimal(saturation)}`,
    ...(cue.ramp > 0 ? [`* ${COMMENT_WORDS.ramp}${ramp}`] : []),
    ...edlNoteLines(cue.note),
    ...(earlier.events ?? []).map((line) => `* ${COMMENT_WORDS.earlier} ${edlText(line)}`),
    ...commentLines(earlier.comments),
  ]
}
