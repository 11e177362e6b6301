import { writeFile } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { handOverFiles } from '../../core/formats/handOverFiles.ts'
import type { ReelId } from '../../core/job/recordIds.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'

export const EXPORT_USAGE = 'reelwright export JOB --as ccc|edl --out FILE [--json]'

/** Writes the cues of a job in an open format and says what it cannot carry. */
export const exportCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const options = {
    as: { type: 'string' },
    out: { type: 'string' },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, EXPORT_USAGE)
  if (!args.ok) return args
  const [path, ...more] = args.value.positionals
  const format = textOption(args.value, 'as')
  const out = textOption(args.value, 'out')
  if (path === undefined || more.length > 0) return wrongUse('Give one job.', EXPORT_USAGE)
  if (format !== 'ccc' && format !== 'edl')
    return wrongUse('Say --as ccc or --as edl.', EXPORT_USAGE)
  if (out === undefined) return wrongUse('Say where to write with --out FILE.', EXPORT_USAGE)
  const job = await readJobFile(path)
  if (!job.ok) return job
  const reelId = Object.keys(job.value.reels)[0] as ReelId | undefined
  if (reelId === undefined) return fail(problem('missing', `${path} holds no reel to export.`))
  const made = handOverFiles(job.value, reelId, format)
  if (!made.ok) return made
  const { files, losses } = made.value
  const written: string[] = []
  try {
    for (const [index, file] of files.entries()) {
      const target = index === 0 ? out : join(dirname(out), numbered(basename(out), index + 1))
      await writeFile(target, file.text)
      written.push(target)
    }
  } catch (error) {
    const isNoFolder = error instanceof Error && 'code' in error && error.code === 'ENOENT'
    const why = isNoFolder ? 'its folder is not there; make it first' : String(error)
    return fail(problem('cannot-read', `${out} cannot be written: ${why}.`, { file: out }))
  }
  if (args.value.values.json) terminal.json({ written, losses })
  else {
    for (const target of written) terminal.print(`Wrote ${target}`)
    for (const loss of losses) terminal.note(`Not carried: ${loss.says} ${loss.done}`)
  }
  return ok(EXIT.fine)
}

/** `list.edl` → `list-2.edl`, for the further files of a list that was split. */
const numbered = (name: string, index: number): string =>
  /\.[^.]+$/u.test(name) ? name.replace(/(\.[^.]+)$/u, `-${index}$1`) : `${name}-${index}`
