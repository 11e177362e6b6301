import { ok, type Result } from '../../core/base/result.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { checkMany, pathsOf } from '../checking/checkMany.ts'
import { checkTasks } from '../checking/checkTask.ts'
import { checkedJson, checkedLines } from '../checking/checkWords.ts'
import { type CheckWish, measureTask } from '../checking/measureTask.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { kernelHere } from '../kernelHere.ts'
import type { Terminal } from '../terminal.ts'

export const CHECK_USAGE =
  'reelwright check JOB|MEDIA… [--files-from FILE|-] [--tolerance NAME] [--media FILE] [--scan print|printing-density] [--json]'

/** The kernel, loaded once when it is first wanted. */
const kernelOnce = (terminal: Terminal): (() => Promise<Result<Kernel>>) => {
  let loading: Promise<Result<Kernel>> | undefined
  const load = async (): Promise<Result<Kernel>> => {
    const kernel = await kernelHere()
    if (kernel.ok && kernel.value.isReference)
      terminal.note(
        'This Node cannot run the kernel (WebAssembly SIMD): levels are exact, but measuring is slow.',
      )
    return kernel
  }
  return () => {
    loading ??= load()
    return loading
  }
}

/** Measures a job's cues, or a scan as it is, against a broadcast tolerance; one or many. */
export const checkCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const options = {
    'files-from': { type: 'string' },
    tolerance: { type: 'string' },
    media: { type: 'string' },
    scan: { type: 'string' },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, CHECK_USAGE)
  if (!args.ok) return args
  const [path, ...more] = args.value.positionals
  const list = textOption(args.value, 'files-from')
  const media = textOption(args.value, 'media')
  const isJson = Boolean(args.value.values.json)
  const wish: CheckWish = {
    tolerance: textOption(args.value, 'tolerance'),
    scan: textOption(args.value, 'scan'),
    usage: CHECK_USAGE,
  }
  const kernel = kernelOnce(terminal)
  if (list !== undefined || more.length > 0) {
    if (media !== undefined)
      return wrongUse(
        '--media is for one job: of many, each scan lies beside its job.',
        CHECK_USAGE,
      )
    const paths = pathsOf(args.value.positionals, list)
    return checkMany(paths, wish, kernel, isJson, terminal)
  }
  if (path === undefined) return wrongUse('Give a job or a reel.', CHECK_USAGE)
  const tasks = await checkTasks(path, media)
  if (!tasks.ok) return tasks
  const checked = await measureTask(tasks.value[0], wish, kernel, terminal)
  if (!checked.ok) return checked
  if (isJson) terminal.json(checkedJson(checked.value))
  else for (const line of checkedLines(checked.value)) terminal.print(line)
  return ok(checked.value.isInside ? EXIT.fine : EXIT.outside)
}
