import { type Problem, problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { DecisionList, ListTiming } from '../core/formats/decisionList.ts'
import { readList } from '../core/formats/readList.ts'
import { type TextOfBytes, textOfBytes } from '../media/textOfBytes.ts'

/** The largest list read: above it there is no list of decisions. */
export const LARGEST_LIST = 64 * 2 ** 20

/** A problem with a file, and the line where it is known, said first and once. */
export const problemOfFile = (name: string, each: Problem): Problem => {
  const { says, at } = each
  if (says.startsWith(name)) return each
  if (at?.line === undefined) return { ...each, says: `${name}: ${says}` }
  const [whole, line, rest = ''] = /^Line (\d+)(.*)$/su.exec(says) ?? []
  const isSaid = whole !== undefined && Number(line) === at.line
  return { ...each, says: `${name}, line ${at.line}${isSaid ? rest : `: ${says}`}` }
}

/** The same result, its problems told as those of a file. */
export const resultOfFile = <Value>(name: string, result: Result<Value>): Result<Value> => {
  if (result.ok) return result
  const [first, ...rest] = result.problems
  return fail(problemOfFile(name, first), ...rest.map((each) => problemOfFile(name, each)))
}

/** The text of a file that may be a list; refused where it is larger than any. */
export const readListText = async (file: File): Promise<Result<TextOfBytes>> => {
  const { name, size } = file
  if (size > LARGEST_LIST)
    return fail(
      problem('too-large', `${name} is larger than a list can be (64 MB); choose another file.`),
    )
  try {
    return ok(textOfBytes(new Uint8Array(await file.arrayBuffer())))
  } catch {
    return fail(problem('cannot-read', `${name} cannot be read any more; choose it again.`))
  }
}

/** A list of decisions out of its text, with what is to be told of how that was read. */
export const readListOf = (
  name: string,
  { text, told }: TextOfBytes,
  { rate, isDropFrame }: ListTiming,
): Result<DecisionList> => {
  const read = readList(name, text, { rate, isDropFrame })
  if (!read.ok) return resultOfFile(name, read)
  return ok({ ...read.value, notTaken: [...told, ...read.value.notTaken] })
}

/** A file as a list of decisions. */
export const readListFile = async (
  file: File,
  timing: ListTiming,
): Promise<Result<DecisionList>> => {
  const read = await readListText(file)
  return read.ok ? readListOf(file.name, read.value, timing) : read
}
