import { dirname, join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { applyReconform, type NewReelFacts } from '../../core/conform/applyReconform.ts'
import { planReconform } from '../../core/conform/planReconform.ts'
import { planRecut } from '../../core/conform/planRecut.ts'
import type { ReconformPlan } from '../../core/conform/reconformPlan.ts'
import { reconformReport } from '../../core/conform/reconformReport.ts'
import { recutReel } from '../../core/conform/recutReel.ts'
import type { ReelPrints } from '../../core/conform/reelPrints.ts'
import { readList } from '../../core/formats/readList.ts'
import { applyChange } from '../../core/job/change.ts'
import { newCueId } from '../../core/job/recordIds.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { textOfBytes } from '../../media/textOfBytes.ts'
import { fingerprintReel } from '../../work/reconformScan.ts'
import { rescanFacts } from '../../work/rescanFacts.ts'
import { ofFile, readBytes } from '../readBytes.ts'
import type { Terminal } from '../terminal.ts'
import type { ImportStep, ImportTask } from './importStep.ts'

/** How the cues find their pictures on the new scan. */
export type ScanOptions = {
  /** Where the scan as it was is, if not beside the job. */
  readonly media: string | undefined
  /** The list by which the reel was cut anew, in place of its pictures. */
  readonly by: string | undefined
}

/** What finds the pictures of a scan again. */
const printsOf = async (
  path: string,
  words: string,
  terminal: Terminal,
): Promise<Result<ReelPrints>> => {
  const opened = await openMediaNode(path)
  if (!opened.ok) return opened
  const source = opened.value
  try {
    return ok(await fingerprintReel(source, (pace) => terminal.pace(words, pace)))
  } finally {
    terminal.clearPace()
    source.close()
  }
}

const factsOf = async ({ reel, path }: ImportTask): Promise<Result<NewReelFacts>> => {
  const opened = await openMediaNode(path)
  if (!opened.ok) return opened
  opened.value.close()
  return ok(rescanFacts(reel, opened.value.facts))
}

const ofReel = (plan: ReconformPlan | undefined): Result<ReconformPlan> =>
  plan ? ok(plan) : fail(problem('not-found', 'This reel is no longer in the job.'))

/** By the pictures of both scans. */
const planByPictures = async (
  { job, reel, path, into }: ImportTask,
  { media }: ScanOptions,
  terminal: Terminal,
): Promise<Result<ReconformPlan>> => {
  const oldPath = media ?? join(dirname(into), reel.media.name)
  const before = await printsOf(oldPath, 'Looking at the scan as it was', terminal)
  if (!before.ok) {
    const [first, ...rest] = before.problems
    const says = `${first.says} Name the scan as it was with --media, so that its pictures can be found on the new one.`
    return fail({ ...first, says }, ...rest)
  }
  const after = await printsOf(path, 'Looking at the new scan', terminal)
  if (!after.ok) return after
  return ofReel(planReconform(job, reel.id, before.value, after.value))
}

/** By the list the reel was cut anew by: source times on the old reel, record times on the new. */
const planByList = async (
  { job, reel }: ImportTask,
  path: string,
  facts: NewReelFacts,
): Promise<Result<ReconformPlan>> => {
  const bytes = await readBytes(path)
  if (!bytes.ok) return bytes
  const recut = { ...reel, ...facts }
  const list = ofFile(readList(path, textOfBytes(bytes.value).text, recut), path)
  if (!list.ok) return list
  return ofReel(planRecut(job, reel.id, list.value, recutReel(recut, list.value)))
}

/** The same as data. */
const planRecord = ({ rows, added, held, notTaken }: ReconformPlan): object => ({
  rows: rows.map(({ number, cue, outcome, first, sure, frames, found, says }) => {
    const from = cue.first
    return { cue: number, id: cue.id, outcome, from, first, sure, frames, found, says }
  }),
  added: added.map(({ first, again }) => ({ first, again: again?.id })),
  heldDropped: held.filter(({ frame }) => frame === undefined).map(({ held: { id } }) => id),
  notTaken,
})

/**
 * Lets the cues of a reel follow their pictures, or a list, to another scan or cut of it. The scan
 * as it was is looked for beside the job, or named.
 */
export const importScan = async (
  task: ImportTask,
  options: ScanOptions,
  terminal: Terminal,
): Promise<Result<ImportStep>> => {
  const { job, reel } = task
  const facts = await factsOf(task)
  if (!facts.ok) return facts
  const plan =
    options.by === undefined
      ? await planByPictures(task, options, terminal)
      : await planByList(task, options.by, facts.value)
  if (!plan.ok) return plan
  const done = applyReconform(job, reel.id, plan.value, facts.value, newCueId)
  if (!done.ok) return done
  return ok({
    job: applyChange(job, done.value.change),
    lines: reconformReport(plan.value).trimEnd().split('\n'),
    told: planRecord(plan.value),
  })
}
