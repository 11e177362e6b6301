import type { AnswerFile } from '../../core/agreement/answerFile.ts'
import { applyAnswers } from '../../core/agreement/applyAnswers.ts'
import { type AnswerPlan, planAnswers } from '../../core/agreement/planAnswers.ts'
import { type SignatureStanding, signatureStands } from '../../core/agreement/signatureStands.ts'
import { ok, type Result } from '../../core/base/result.ts'
import { readAnswerFile } from '../../core/formats/answer/readAnswerFile.ts'
import { applyChange } from '../../core/job/change.ts'
import { cueNumber, cuesOfReel } from '../../core/job/cueList.ts'
import type { CueId } from '../../core/job/recordIds.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { ofFile, readText } from '../readBytes.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'
import { stillAsRead, writeJobFile } from '../writeJobFile.ts'

export const ANSWER_USAGE =
  'reelwright answer FILE… --into JOB [--prefer NAME] [--dry-run] [--json]'

const standardInput = async (): Promise<string> => {
  let text = ''
  for await (const piece of process.stdin.setEncoding('utf8')) text += String(piece)
  return text
}

const readOne = async (path: string): Promise<Result<AnswerFile>> => {
  const text = path === '-' ? ok(await standardInput()) : await readText(path)
  return text.ok ? ofFile(readAnswerFile(text.value), path) : text
}

const SAYS = { agreed: 'agrees', asked: 'asks for changes', open: 'takes back' } as const

const numberOf = ({ job }: AnswerPlan, id: CueId): string => {
  const cue = Object.hasOwn(job.cues, id) ? job.cues[id] : undefined
  return cue ? `cue ${cueNumber(cuesOfReel(job, cue.reel), cue)}` : `a cue that is gone (${id})`
}

/** What each answer is and what taking it does, one a line; then where reviewers differ. */
const lines = (
  plan: AnswerPlan,
  signatures: readonly SignatureStanding[],
  preferred: string | undefined,
): readonly string[] => [
  ...plan.rows.map(({ cue, answer, outcome, changes }, index) => {
    const { by, says, alternate, note } = answer
    const parts = [
      `${by === '' ? 'Somebody without a name' : by} ${SAYS[says]}: ${numberOf(plan, cue)}`,
      ...(alternate === null ? [] : [`with the alternate “${alternate}”`]),
      ...(note === '' ? [] : [`“${note.replace(/\s+/gu, ' ')}”`]),
      ...(signatures[index] === 'not signed' ? [] : [`signature ${signatures[index]}`]),
      ...(outcome === 'new' ? [] : [outcome]),
      ...(changes.length === 0 ? [] : [`changed since the pack was made: ${changes.join(', ')}`]),
    ]
    return `${parts.join('; ')}.`
  }),
  ...plan.conflicts.map(
    ({ cue, answers }) =>
      `Not of one mind about ${numberOf(plan, cue)}: ${answers.map(({ by, says }) => `${by} ${SAYS[says]}`).join(', ')}${preferred === undefined ? '; say whose word holds with --prefer NAME' : `; ${preferred}’s word holds`}.`,
  ),
]

/**
 * Takes the answers of review packs into a job, all or none: 1 where reviewers are not of one mind
 * and nobody is preferred, with nothing written.
 */
export const answerCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const flag = { type: 'boolean' } as const
  const options = { into: text, prefer: text, 'dry-run': flag, json: flag } as const
  const args = readArguments(argv, options, ANSWER_USAGE)
  if (!args.ok) return args
  const paths = args.value.positionals
  const into = textOption(args.value, 'into')
  const prefer = textOption(args.value, 'prefer')
  if (paths.length === 0) return wrongUse('Give an answer to take in.', ANSWER_USAGE)
  if (into === undefined) return wrongUse('Say which job with --into JOB.', ANSWER_USAGE)
  const job = await readJobFile(into)
  if (!job.ok) return job
  const files: AnswerFile[] = []
  for (const path of paths) {
    const read = await readOne(path)
    if (!read.ok) return read
    files.push(read.value)
  }
  const plan = planAnswers(job.value, files)
  if (!plan.ok) return plan
  const { rows, conflicts } = plan.value
  const signatures = await Promise.all(
    rows.map(({ cue, answer }) => signatureStands(job.value, cue, answer)),
  )
  const isDry = Boolean(args.value.values['dry-run'])
  const settled = conflicts.every(({ answers }) => answers.some(({ by }) => by === prefer))
  const isForged = signatures.includes('wrong')
  const isTaken = settled && !isDry && !isForged
  if (isTaken) {
    const choices = new Map(conflicts.map(({ cue }) => [cue, prefer ?? '']))
    const change = applyAnswers(job.value, plan.value, choices)
    if (!change.ok) return change
    const asRead = await stillAsRead(into, job.value)
    if (!asRead.ok) return asRead
    const kept = await writeJobFile(into, applyChange(job.value, change.value.change), paths)
    if (!kept.ok) return kept
  }
  if (args.value.values.json)
    terminal.json({
      job: into,
      written: isTaken,
      answers: rows.map(({ cue, answer: { look: _, ...said }, outcome, changes }, index) => ({
        ...{ cue, outcome, changes, signature: signatures[index] },
        answer: said,
      })),
      conflicts: conflicts.map(({ cue, answers }) => ({ cue, by: answers.map(({ by }) => by) })),
    })
  else {
    for (const each of lines(plan.value, signatures, settled ? prefer : undefined))
      terminal.print(each)
    if (isForged)
      terminal.print('Nothing was written: a signature is wrong, so that an answer was changed.')
    else if (!settled) terminal.print('Nothing was written: say whose word holds.')
    else terminal.print(isDry ? 'Nothing was written: a dry run.' : `Wrote ${into}`)
  }
  return ok(settled && !isForged ? EXIT.fine : EXIT.outside)
}
