import type { Grade } from '../colour/grade.ts'
import type { Triple } from '../colour/triple.ts'
import { shortDecimal } from '../formats/decimal.ts'
import type { Cue } from '../job/job.ts'
import { IDENTITY_FRAMING, sameFraming } from '../picture/framing.ts'
import { formatTimecode } from '../time/timecode.ts'
import type { ReconformPlan, ReconformRow } from './reconformPlan.ts'

const many = (count: number, of: string): string => `${count} ${of}${count === 1 ? '' : 's'}`

const number = (value: number): string => shortDecimal(value, 12)

const triple = (values: Triple): string => values.map(number).join(' ')

const gradeWords = ({ lift, gamma, gain, saturation }: Grade): string =>
  `lift ${triple(lift)}, gamma ${triple(gamma)}, gain ${triple(gain)}, saturation ${number(saturation)}`

const SAID = { agreed: 'agreed', asked: 'changes asked', open: 'open again' } as const

/** Everything a cue says, so that it can be made again by hand. */
const cueLines = (cue: Cue): readonly string[] => [
  `Grade${cue.gradeName === '' ? '' : ` ${cue.gradeName}`}: ${gradeWords(cue.grade)}`,
  ...cue.alternates.map(({ name, grade }) => `Alternate ${name}: ${gradeWords(grade)}`),
  ...(sameFraming(cue.framing, IDENTITY_FRAMING)
    ? []
    : [
        `Framing: ${Object.entries(cue.framing)
          .map(([name, value]) => `${name} ${number(value)}`)
          .join(', ')}`,
      ]),
  ...(cue.ramp > 0 ? [`Ramp: ${many(cue.ramp, 'frame')}, ${cue.rampShape}`] : []),
  ...(cue.scene === '' ? [] : [`Scene: ${cue.scene}`]),
  ...(cue.note === '' ? [] : [`Note: ${cue.note.replace(/\s+/gu, ' ')}`]),
  ...cue.answers.map(
    ({ says, by, at, note }) =>
      `Agreement: ${SAID[says]}${by === '' ? '' : ` by ${by}`}${at === null ? '' : `, ${at}`}${note === '' ? '' : `: ${note.replace(/\s+/gu, ' ')}`}`,
  ),
]

/**
 * What a plan does, as plain text: which cues follow, by how many frames and how surely, which are
 * doubtful, and every number of those that are lost.
 */
export const reconformReport = (plan: ReconformPlan): string => {
  const { follows, reel, frames, rows, added, held, notTaken } = plan
  const isByList = follows === 'list'
  const count = (outcome: ReconformRow['outcome']): number =>
    rows.filter((row) => row.outcome === outcome).length
  const label = (first: number): string =>
    `${formatTimecode(reel.startCount + first, reel.rate, reel.isDropFrame)} (frame ${first})`
  const rowLine = ({
    number: cueNumber,
    cue,
    first = cue.first,
    sure,
    frames: length,
    found,
    says,
  }: ReconformRow): string => {
    const by = first - cue.first
    const moved =
      by === 0
        ? `stays at ${label(first)}`
        : `${label(cue.first)} to ${label(first)}, ${many(Math.abs(by), 'frame')} ${by < 0 ? 'earlier' : 'later'}`
    return `  Cue ${cueNumber}: ${moved}; ${found} of ${many(length, 'frame')} ${isByList ? 'in the list' : `found, ${Math.round(100 * sure)} % sure`}.${says === '' ? '' : ` ${says}`}`
  }
  const part = (title: string, lines: readonly string[]): readonly string[] =>
    lines.length === 0 ? [] : ['', title, ...lines]
  const of = (outcome: ReconformRow['outcome']) => rows.filter((row) => row.outcome === outcome)
  const dropped = held.filter(({ frame }) => frame === undefined)
  const again = added.filter((each) => each.again !== undefined)
  const fresh = added.filter((each) => each.again === undefined)
  const numberOf = (cue: Cue | undefined): number =>
    rows.find((row) => row.cue === cue)?.number ?? 0
  const lines = [
    `Cues that follow ${isByList ? 'a list' : 'their pictures'}: reel ${reel.name}`,
    '',
    `Before: ${many(reel.frames, 'frame')}, ${many(rows.length, 'cue')}. Now: ${many(frames, 'frame')}.`,
    `${count('follows')} follow, ${count('doubtful')} are doubtful, ${count('lost')} are lost. ${many(added.length, 'cue')} begin anew.`,
    'Timecode is counted from the first frame of the reel as it was.',
    ...part('Follow', of('follows').map(rowLine)),
    ...part('Doubtful: look at these', of('doubtful').map(rowLine)),
    ...part(
      'Lost: left out of the reel, with all they held',
      of('lost').flatMap(({ number: cueNumber, cue, frames: length, says }) => [
        `  Cue ${cueNumber}, ${label(cue.first)}, ${many(length, 'frame')}. ${says}`,
        ...cueLines(cue).map((line) => `    ${line}`),
      ]),
    ),
    ...part(
      isByList ? 'Cues that the list has again' : 'Pictures that come again',
      again.map(({ first, again: cue }) => `  ${label(first)}: as cue ${numberOf(cue)}.`),
    ),
    ...part(
      `${isByList ? 'From elsewhere' : 'New pictures'}: a cue that changes nothing begins`,
      fresh.map(({ first }) => `  ${label(first)}`),
    ),
    ...part(
      'Held frames that are not there: dropped',
      dropped.map(({ held: { name, frame } }) => `  ${name}, ${label(frame)}`),
    ),
    ...part(
      'Remarks',
      notTaken.map(
        ({ says, at }) =>
          `  ${at?.line === undefined || says.startsWith('Line ') ? '' : `Line ${at.line}: `}${says}`,
      ),
    ),
  ]
  return `${lines.join('\n')}\n`
}
