import { randomUUID } from 'node:crypto'
import { rm } from 'node:fs/promises'
import { ok, type Result } from '../../core/base/result.ts'
import { createPaceKeeper } from '../../work/pace.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import type { Terminal } from '../terminal.ts'
import { joinParts } from '../transfer/joinParts.ts'

export const JOIN_USAGE = 'reelwright join PARTS… --out PATH [--move] [--json]'

/** Joins the parts of a pass, wherever and in whatever order they were made. */
export const joinCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const options = {
    out: { type: 'string' },
    move: { type: 'boolean' },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, JOIN_USAGE)
  if (!args.ok) return args
  const folders = args.value.positionals.map((each) => each.replace(/\/+$/u, ''))
  const out = textOption(args.value, 'out')?.replace(/\/+$/u, '')
  if (folders.length === 0) return wrongUse('Name the parts to join.', JOIN_USAGE)
  if (out === undefined || out === '')
    return wrongUse('Say where to write with --out PATH.', JOIN_USAGE)
  const moves = Boolean(args.value.values.move)
  const pace = createPaceKeeper(1000, () => performance.now())
  const joined = await joinParts(folders, {
    out,
    isChecked: false,
    by: moves ? 'link or move' : 'link or copy',
    unfinished: `${out}.unfinished-${randomUUID().slice(0, 8)}`,
    onBytes: (done, total) => terminal.pace('Checking', pace(Math.round((1000 * done) / total))),
  })
  if (!joined.ok) return joined
  terminal.clearPace()
  if (moves) for (const { place } of joined.value.parts) await rm(place, { recursive: true })
  const { parts, passedOver } = joined.value
  const frames = parts[0]?.manifest.frames ?? 0
  if (passedOver.length > 0) terminal.problems(passedOver)
  if (args.value.values.json)
    terminal.json({ written: out, parts: parts.length, frames, passedOver })
  else terminal.print(`Wrote ${out}: ${parts.length} parts, ${frames} frames`)
  return ok(EXIT.fine)
}
