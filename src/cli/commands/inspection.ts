import { ok, type Result } from '../../core/base/result.ts'
import { filmCautions } from '../../core/film/filmCautions.ts'
import { NO_PARTICULARS, type Particulars } from '../../core/film/particulars.ts'
import { readParticulars } from '../../core/formats/job/readParticulars.ts'
import { setParticulars } from '../../core/job/commands/setParticulars.ts'
import { inspectionHtml } from '../../core/report/inspectionHtml.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { ofFile, readText } from '../readBytes.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'
import { notOver, writeWhole } from '../writeFiles.ts'
import { changeJobFile } from '../writeJobFile.ts'

export const INSPECTION_USAGE =
  'reelwright inspection JOB [--reel ID] [--take PARTICULARS.json] [--out FILE.html] [--json]'

/** What was found in the can: taken into the job, told, and written as a page to print. */
export const inspectionCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const options = { reel: text, take: text, out: text, json: { type: 'boolean' } } as const
  const args = readArguments(argv, options, INSPECTION_USAGE)
  if (!args.ok) return args
  const [path, another] = args.value.positionals
  if (path === undefined || another !== undefined)
    return wrongUse('Give one job.', INSPECTION_USAGE)
  const before = await readJobFile(path)
  if (!before.ok) return before
  const chosen = chooseReel(before.value, textOption(args.value, 'reel'), INSPECTION_USAGE)
  if (!chosen.ok) return chosen
  const { id } = chosen.value
  const [take, out] = [textOption(args.value, 'take'), textOption(args.value, 'out')]
  if (out !== undefined) {
    const free = await notOver([out], [path, ...(take === undefined ? [] : [take])])
    if (!free.ok) return free
  }
  if (take !== undefined) {
    const sheet = await readText(take)
    if (!sheet.ok) return sheet
    const found = ofFile(readParticulars(sheet.value), take)
    if (!found.ok) return found
    const edit = (as: Particulars): Particulars => ({ ...as, ...found.value })
    const kept = await changeJobFile(
      path,
      (now) => ofFile(setParticulars(now, id, edit, 'What was found in the can'), take),
      [take],
    )
    if (!kept.ok) return kept
  }
  const job = await readJobFile(path)
  if (!job.ok) return job
  if (out !== undefined) {
    const page = inspectionHtml(job.value, id, new Date().toISOString().slice(0, 10))
    if (!page.ok) return page
    const written = await writeWhole(out, page.value)
    if (!written.ok) return written
  }
  const particulars = job.value.reels[id]?.particulars ?? NO_PARTICULARS
  const cautions = filmCautions(particulars)
  if (args.value.values.json)
    terminal.json({ reel: id, particulars, cautions, written: out ?? null })
  else {
    for (const each of cautions) terminal.print(`▲ ${each}`)
    if (take !== undefined) terminal.print(`Wrote ${path}`)
    if (out !== undefined) terminal.print(`Wrote ${out}`)
  }
  return ok(EXIT.fine)
}
