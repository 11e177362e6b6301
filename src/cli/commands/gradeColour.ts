import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { applyCdl, type Cdl, type CdlStyle, checkCdl } from '../../core/colour/cdl.ts'
import type { Triple } from '../../core/colour/triple.ts'
import { type Arguments, readArguments, textOption, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import type { Terminal } from '../terminal.ts'

export const GRADE_USAGE =
  'reelwright grade --slope a,b,c --offset a,b,c --power a,b,c --saturation s [--style clamp|noclamp] [--json] R G B'

const number = (text: string): number | undefined => {
  const value = Number(text)
  return text.trim() !== '' && Number.isFinite(value) ? value : undefined
}

const tripleFrom = (text: string | undefined, name: string, rest: number): Result<Triple> => {
  if (text === undefined) return ok([rest, rest, rest])
  const [r, g, b, ...more] = text.split(',').map(number)
  if (r === undefined || g === undefined || b === undefined || more.length > 0)
    return fail(
      problem('wrong-use', `--${name} takes three numbers as in 1,0.9,1.1; got “${text}”.`),
    )
  return ok([r, g, b])
}

const cdlFrom = (args: Arguments): Result<Cdl> => {
  const slope = tripleFrom(textOption(args, 'slope'), 'slope', 1)
  const offset = tripleFrom(textOption(args, 'offset'), 'offset', 0)
  const power = tripleFrom(textOption(args, 'power'), 'power', 1)
  if (!slope.ok) return slope
  if (!offset.ok) return offset
  if (!power.ok) return power
  const saturation = number(textOption(args, 'saturation') ?? '1')
  if (saturation === undefined)
    return fail(problem('wrong-use', '--saturation takes one number, such as 0.9.'))
  const cdl = { slope: slope.value, offset: offset.value, power: power.value, saturation }
  const checked = checkCdl(cdl)
  return checked.ok ? checked : fail({ ...checked.problems[0], code: 'wrong-use' })
}

/** One colour through an ASC CDL correction. */
export const gradeColourCommand = (
  argv: readonly string[],
  terminal: Terminal,
): Result<ExitStatus> => {
  const options = {
    slope: { type: 'string' },
    offset: { type: 'string' },
    power: { type: 'string' },
    saturation: { type: 'string' },
    style: { type: 'string' },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, GRADE_USAGE)
  if (!args.ok) return args
  const cdl = cdlFrom(args.value)
  if (!cdl.ok) return cdl
  const style = textOption(args.value, 'style') ?? 'noclamp'
  if (style !== 'clamp' && style !== 'noclamp')
    return wrongUse(`--style is clamp or noclamp, not “${style}”.`, GRADE_USAGE)
  const [r, g, b, ...more] = args.value.positionals.map(number)
  if (r === undefined || g === undefined || b === undefined || more.length > 0)
    return wrongUse('Give the colour as three numbers, R G B.', GRADE_USAGE)
  const graded = applyCdl([r, g, b], cdl.value, style satisfies CdlStyle)
  if (args.value.values.json) terminal.json({ in: [r, g, b], out: graded, style, cdl: cdl.value })
  else terminal.print(graded.map((value) => String(Number(value.toPrecision(10)))).join(' '))
  return ok(EXIT.fine)
}
