#!/usr/bin/env node
import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import { MediaError } from '../media/mediaError.ts'
import { AGREED_USAGE, agreedCommand } from './commands/agreed.ts'
import { ANSWER_USAGE, answerCommand } from './commands/answer.ts'
import { CHART_USAGE, chartCommand } from './commands/chart.ts'
import { CHECK_USAGE, checkCommand } from './commands/check.ts'
import { CUES_USAGE, cuesCommand } from './commands/cues.ts'
import { EXPORT_USAGE, exportCommand } from './commands/exportList.ts'
import { FILM_USAGE, filmCommand } from './commands/film.ts'
import { FLASHES_USAGE, flashesCommand } from './commands/flashes.ts'
import { GRADE_USAGE, gradeColourCommand } from './commands/gradeColour.ts'
import { IMPORT_USAGE, importCommand } from './commands/importFiles.ts'
import { INSPECTION_USAGE, inspectionCommand } from './commands/inspection.ts'
import { JOIN_USAGE, joinCommand } from './commands/join.ts'
import { MACHINE_USAGE, machineCommand } from './commands/machine.ts'
import { PACK_USAGE, packCommand } from './commands/pack.ts'
import { SERVE_USAGE, serveCommand } from './commands/serve.ts'
import { SOLVE_USAGE, solveCommand } from './commands/solve.ts'
import { SOUND_USAGE, soundCommand } from './commands/sound.ts'
import { STILL_USAGE, stillCommand } from './commands/still.ts'
import { TRANSFER_USAGE, transferCommand } from './commands/transfer.ts'
import { VALIDATE_USAGE, validateCommand } from './commands/validate.ts'
import { EXIT, type ExitStatus, exitStatusOf } from './exitStatus.ts'
import { processTerminal, type Terminal } from './terminal.ts'
import { isPartThread, servePartThread } from './transfer/partThread.ts'

type CommandFunction = (
  argv: readonly string[],
  terminal: Terminal,
) => Result<ExitStatus> | Promise<Result<ExitStatus>>

type Command = { readonly usage: string; readonly run: CommandFunction }

const COMMANDS: Readonly<Record<string, Command>> = {
  cues: { usage: CUES_USAGE, run: cuesCommand },
  check: { usage: CHECK_USAGE, run: checkCommand },
  flashes: { usage: FLASHES_USAGE, run: flashesCommand },
  import: { usage: IMPORT_USAGE, run: importCommand },
  export: { usage: EXPORT_USAGE, run: exportCommand },
  validate: { usage: VALIDATE_USAGE, run: validateCommand },
  grade: { usage: GRADE_USAGE, run: gradeColourCommand },
  still: { usage: STILL_USAGE, run: stillCommand },
  transfer: { usage: TRANSFER_USAGE, run: transferCommand },
  join: { usage: JOIN_USAGE, run: joinCommand },
  pack: { usage: PACK_USAGE, run: packCommand },
  answer: { usage: ANSWER_USAGE, run: answerCommand },
  agreed: { usage: AGREED_USAGE, run: agreedCommand },
  film: { usage: FILM_USAGE, run: filmCommand },
  inspection: { usage: INSPECTION_USAGE, run: inspectionCommand },
  sound: { usage: SOUND_USAGE, run: soundCommand },
  chart: { usage: CHART_USAGE, run: chartCommand },
  machine: { usage: MACHINE_USAGE, run: machineCommand },
  solve: { usage: SOLVE_USAGE, run: solveCommand },
  serve: { usage: SERVE_USAGE, run: serveCommand },
}

const HELP = [
  'reelwright: scene grading decision lists at the command line',
  '',
  ...Object.values(COMMANDS).map(({ usage }) => `  ${usage}`),
  '',
  'Exit status: 0 fine, 1 outside tolerance, a limit passed, a check wrong or a cue not agreed, 2 wrong use, 3 cannot read or write.',
  'With --json, standard output holds one JSON value: the answer, or { "problems": [...] }.',
  'Compressed video is read through ffmpeg on the PATH; image sequences need nothing.',
].join('\n')

const run = async (argv: readonly string[], terminal: Terminal): Promise<Result<ExitStatus>> => {
  const [name, ...rest] = argv
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
    terminal.print(HELP)
    return ok(name === undefined ? EXIT.wrongUse : EXIT.fine)
  }
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined
  if (!command) return fail(problem('wrong-use', `There is no command “${name}”.\n\n${HELP}`))
  if (rest.some((arg) => arg === '--help' || arg === '-h')) {
    terminal.print(`Usage: ${command.usage}`)
    return ok(EXIT.fine)
  }
  try {
    return await command.run(rest, terminal)
  } catch (error) {
    if (error instanceof MediaError) return fail(error.problem)
    throw error
  }
}

// Whoever reads the output may stop before its end, as `head` does: that is no fault.
process.stdout.on('error', (error) => {
  if ('code' in error && error.code === 'EPIPE') process.exit()
  throw error
})

const runProgram = async (): Promise<void> => {
  const terminal = processTerminal()
  const argv = process.argv.slice(2)
  const outcome = await run(argv, terminal)
  if (!outcome.ok) {
    terminal.problems(outcome.problems)
    if (argv.includes('--json')) terminal.json({ problems: outcome.problems })
  }
  process.exitCode = outcome.ok ? outcome.value : exitStatusOf(outcome.problems)
}

if (isPartThread()) await servePartThread()
else await runProgram()
