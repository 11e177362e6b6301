import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { type Rate, rate, snapRate } from './rate.ts'

const FASTEST = 1000

/** A speed as it is written: `24`, `16 2/3`, `50/3`, `24000/1001`, `23.976`. */
export const parseRate = (text: string): Result<Rate> => {
  const trimmed = text.trim().replace('⅔', ' 2/3').replace('⅓', ' 1/3')
  const mixed = /^(\d+) (\d+)\/(\d+)$/u.exec(trimmed)
  const fraction = /^(\d+)\/(\d+)$/u.exec(trimmed)
  const decimal = /^\d+(?:\.\d+)?$/u.test(trimmed) ? Number(trimmed) : Number.NaN
  const [num, den] = mixed
    ? [Number(mixed[1]) * Number(mixed[3]) + Number(mixed[2]), Number(mixed[3])]
    : [Number(fraction?.[1]), Number(fraction?.[2])]
  const found =
    Number.isSafeInteger(num) && Number.isSafeInteger(den) && num > 0 && den > 0
      ? rate(num, den)
      : decimal > 0
        ? snapRate(decimal)
        : undefined
  return found && found.num / found.den <= FASTEST
    ? ok(found)
    : fail(
        problem(
          'malformed',
          `“${text}” is no speed; write frames a second, as in 24, 16 2/3 or 24000/1001.`,
        ),
      )
}
