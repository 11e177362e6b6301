import { type AgreedRow, agreedRows } from '../../core/agreement/agreedRows.ts'
import { lookSum } from '../../core/agreement/cueLook.ts'
import { type SignatureStanding, signatureStands } from '../../core/agreement/signatureStands.ts'
import { ok, type Result } from '../../core/base/result.ts'
import type { Job, Reel } from '../../core/job/job.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'

export const AGREED_USAGE = 'reelwright agreed JOB [--reel ID] [--json]'

const WORDS = {
  open: 'open',
  agreed: 'agreed',
  asked: 'changes asked',
  changed: 'changed since',
} as const

/** A cue that stands as agreed must be so by what the answer holds, not only by what it says. */
type Told = AgreedRow & {
  readonly signature: SignatureStanding | undefined
  /** Whether the checksum of the answer is that of the look it holds. */
  readonly isWhole: boolean
}

const told = async (job: Job, row: AgreedRow): Promise<Told> => {
  const { cue, answer } = row
  return {
    ...row,
    signature: answer && (await signatureStands(job, cue.id, answer)),
    isWhole: !answer || lookSum(answer.look) === answer.sha256,
  }
}

const isAsAgreed = ({ standing, signature, isWhole }: Told): boolean =>
  standing === 'agreed' && isWhole && signature !== 'wrong'

const line = (reel: Reel, row: Told): string => {
  const { cue, number, standing, answer, changes, signature, isWhole } = row
  const place = formatTimecode(reel.startCount + cue.first, reel.rate, reel.isDropFrame)
  const by = !answer
    ? []
    : [
        `${answer.by === '' ? 'at the job' : answer.by}${answer.at === null ? '' : ` ${answer.at.slice(0, 16).replace('T', ' ')} UTC`}`,
        ...(answer.alternate === null ? [] : [`with the alternate “${answer.alternate}”`]),
        ...(answer.note === '' ? [] : [`“${answer.note.replace(/\s+/gu, ' ')}”`]),
        ...(signature === 'not signed' ? [] : [`signature ${signature}`]),
      ]
  const faults = [
    ...(isWhole ? [] : ['the checksum is not that of the pictures it holds']),
    ...(changes.length > 0 ? [`since then: ${changes.join(', ')}`] : []),
  ]
  return `${String(number).padStart(4)}  ${place}  ${[WORDS[standing], ...by, ...faults].join('; ')}`
}

/** How the cues of a reel stand with who agrees to them: 1 where any is not agreed as it is. */
export const agreedCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const options = { reel: { type: 'string' }, json: { type: 'boolean' } } as const
  const args = readArguments(argv, options, AGREED_USAGE)
  if (!args.ok) return args
  const [path, another] = args.value.positionals
  if (path === undefined || another !== undefined) return wrongUse('Give one job.', AGREED_USAGE)
  const job = await readJobFile(path)
  if (!job.ok) return job
  const reel = chooseReel(job.value, textOption(args.value, 'reel'), AGREED_USAGE)
  if (!reel.ok) return reel
  const rows = await Promise.all(
    agreedRows(job.value, reel.value).map((row) => told(job.value, row)),
  )
  const left = rows.filter((row) => !isAsAgreed(row)).length
  if (args.value.values.json)
    terminal.json({
      reel: reel.value.id,
      agreed: rows.length - left,
      cues: rows.map(({ cue, number, standing, answer, changes, signature, isWhole }) => ({
        ...{ number, id: cue.id, first: cue.first, standing, changes },
        ...(answer && {
          ...{ by: answer.by, at: answer.at, note: answer.note, alternate: answer.alternate },
          ...{ sha256: answer.sha256, isWhole, pack: answer.pack, signature },
          answers: cue.answers.length,
        }),
      })),
    })
  else {
    for (const row of rows) terminal.print(line(reel.value, row))
    terminal.print(`${rows.length - left} of ${rows.length} cues are agreed as they are.`)
  }
  return ok(left === 0 ? EXIT.fine : EXIT.outside)
}
