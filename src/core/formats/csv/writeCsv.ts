import { agreementOf } from '../../agreement/agreementOf.ts'
import { formatCsv } from '../../base/csv.ts'
import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { gradeToCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'
import { cueEnd, cuesOfReel } from '../../job/cueList.ts'
import type { Cue, Job, Reel } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { formatFootage } from '../../time/footage.ts'
import { secondsAt } from '../../time/rate.ts'
import { formatTimecode } from '../../time/timecode.ts'
import { exactDecimal, shortDecimal } from '../decimal.ts'
import { fileNameOf } from '../listNames.ts'
import { CSV_COLUMNS, type CsvColumn } from './csvColumns.ts'
import { guardText } from './guardedText.ts'
import { wholeText } from './wholeText.ts'

const AGREEMENT_WORDS = {
  open: 'open',
  agreed: 'agreed',
  asked: 'changes asked',
  changed: 'changed since',
} as const

const channels = <Name extends string>(name: Name, [r, g, b]: Triple) =>
  ({
    [`${name} R`]: exactDecimal(r),
    [`${name} G`]: exactDecimal(g),
    [`${name} B`]: exactDecimal(b),
  }) as Readonly<Record<`${Name} ${'R' | 'G' | 'B'}`, string>>

const textCell = (text: string): string => guardText(wholeText(text))

type Row = Readonly<Record<CsvColumn, string>>

const rowOf = (job: Job, reel: Reel, cue: Cue, number: number, end: number): Row => {
  const { grade, framing } = cue
  const cdl = gradeToCdl(grade)
  const timecode = (frame: number): string =>
    formatTimecode(reel.startCount + frame, reel.rate, reel.isDropFrame)
  const frames = end - cue.first
  return {
    cue: String(number),
    id: cue.id,
    'first frame': String(cue.first),
    'last frame': String(end - 1),
    'timecode in': timecode(cue.first),
    'timecode out': timecode(end),
    footage: formatFootage(cue.first, reel.gauge),
    frames: String(frames),
    seconds: shortDecimal(secondsAt(frames, reel.rate), 3),
    scene: textCell(cue.scene),
    note: textCell(cue.note),
    boundary: cue.boundary.kind,
    confidence: exactDecimal(cue.boundary.confidence),
    ramp: String(cue.ramp),
    'ramp shape': cue.rampShape,
    ...channels('lift', grade.lift),
    ...channels('gamma', grade.gamma),
    ...channels('gain', grade.gain),
    saturation: exactDecimal(grade.saturation),
    ...channels('slope', cdl.slope),
    ...channels('offset', cdl.offset),
    ...channels('power', cdl.power),
    zoom: exactDecimal(framing.zoom),
    pan: exactDecimal(framing.pan),
    tilt: exactDecimal(framing.tilt),
    rotation: exactDecimal(framing.rotation),
    squeeze: exactDecimal(framing.squeeze),
    blanking: exactDecimal(framing.blanking),
    'grade name': textCell(cue.gradeName),
    alternates: textCell(cue.alternates.map(({ name }) => name).join('; ')),
    agreement: AGREEMENT_WORDS[agreementOf(job, cue)],
  }
}

/** Spreadsheets read UTF-8 rightly by its mark; a file that is all ASCII does without. */
const marked = (text: string): string => (/[^\0-\u007f]/u.test(text) ? `\ufeff${text}` : text)

/**
 * A reel's ledger as comma-separated values (RFC 4180): a row of headings (`CSV_COLUMNS`) and a
 * row a cue, every number of a grade and a framing exact to the last bit, as lift, gamma, gain and
 * as ASC CDL. Text that begins like a formula has an apostrophe in front. CR LF, UTF-8.
 */
export const writeCsv = (
  job: Job,
  reelId: ReelId,
): Result<{ readonly files: readonly { readonly name: string; readonly text: string }[] }> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  const cues = cuesOfReel(job, reelId)
  const rows = cues.map((cue, index) => {
    const row = rowOf(job, reel, cue, index + 1, cueEnd(cues, index, reel.frames))
    return CSV_COLUMNS.map((column) => row[column])
  })
  const text = marked(formatCsv([CSV_COLUMNS, ...rows]))
  return ok({ files: [{ name: `${fileNameOf(reel)}.csv`, text }] })
}
