import { ok, type Result } from '../../core/base/result.ts'
import { readReadings } from '../../core/formats/readings/readReadings.ts'
import { adviceWords } from '../../core/lineup/adviceWords.ts'
import { solveAdjustment } from '../../core/lineup/solveAdjustment.ts'
import { readArguments, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { ofFile, readText } from '../readBytes.ts'
import type { Terminal } from '../terminal.ts'

export const SOLVE_USAGE = 'reelwright solve READINGS.json [--json]'

/** What to do next with controls that act on each other: 1 where nothing brings all inside. */
export const solveCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const args = readArguments(argv, { json: { type: 'boolean' } } as const, SOLVE_USAGE)
  if (!args.ok) return args
  const [path, another] = args.value.positionals
  if (path === undefined || another !== undefined)
    return wrongUse('Give one file of readings.', SOLVE_USAGE)
  const text = await readText(path)
  if (!text.ok) return text
  const adjustment = ofFile(readReadings(text.value), path)
  if (!adjustment.ok) return adjustment
  const advice = ofFile(solveAdjustment(adjustment.value), path)
  if (!advice.ok) return advice
  if (args.value.values.json) terminal.json(advice.value)
  else for (const line of adviceWords(adjustment.value, advice.value)) terminal.print(line)
  return ok(advice.value.kind === 'cannot' ? EXIT.outside : EXIT.fine)
}
