import { type ParseArgsConfig, parseArgs } from 'node:util'
import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'

export type OptionNames = NonNullable<ParseArgsConfig['options']>

export type Arguments = {
  readonly values: Readonly<Record<string, string | boolean | undefined>>
  readonly positionals: readonly string[]
}

/** The options and names given to a command; what does not fit is wrong use, with the usage. */
export const readArguments = (
  args: readonly string[],
  options: OptionNames,
  usage: string,
): Result<Arguments> => {
  try {
    const { values, positionals } = parseArgs({
      args: protectNegatives(args),
      options,
      allowPositionals: true,
      strict: true,
    })
    return ok({
      values: values as Arguments['values'],
      positionals: positionals.map(unprotect),
    })
  } catch (error) {
    const says = error instanceof Error ? error.message : String(error)
    const option = /'(?:-\w, )?(--?[\w-]+)/u.exec(says)?.[1]
    const isUnknown =
      error instanceof Error && 'code' in error && error.code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION'
    return wrongUse(
      option === undefined
        ? says
        : isUnknown
          ? `There is no option ${option} here.`
          : `Give ${option} as the usage has it.`,
      usage,
    )
  }
}

const GUARD = '\u0000'

/** A negative number is a value, not an option: `-0.1` or `-.1,0,0`, by itself or after an option. */
const protectNegatives = (args: readonly string[]): string[] => {
  const guarded: string[] = []
  for (const arg of args) {
    const isNegative = /^-[.\d]/u.test(arg)
    const last = guarded.at(-1)
    if (isNegative && last !== undefined && /^--[a-z-]+$/u.test(last))
      guarded[guarded.length - 1] = `${last}=${arg}`
    else guarded.push(isNegative ? GUARD + arg : arg)
  }
  return guarded
}

const unprotect = (text: string): string => (text.startsWith(GUARD) ? text.slice(1) : text)

export const wrongUse = (says: string, usage: string): Result<never> =>
  fail(problem('wrong-use', `${says}\nUsage: ${usage}`))

/** A string option's value, or undefined. */
export const textOption = (args: Arguments, name: string): string | undefined => {
  const value = args.values[name]
  return typeof value === 'string' ? value : undefined
}
