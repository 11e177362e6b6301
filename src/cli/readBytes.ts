import { readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import { utf8Text } from '../media/textOfBytes.ts'

/** A whole file, or a problem that names it. */
export const readBytes = async (path: string): Promise<Result<Uint8Array>> => {
  try {
    return ok(await readFile(path))
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined
    const why =
      code === 'ENOENT'
        ? 'is not there; check the name'
        : code === 'EISDIR'
          ? 'is a folder; give a file'
          : 'cannot be read; check who may read it'
    return fail(problem('cannot-read', `${path} ${why}.`, { file: path }))
  }
}

/** The same as UTF-8 text; refused where it is none. */
export const readText = async (path: string): Promise<Result<string>> => {
  const bytes = await readBytes(path)
  return bytes.ok ? ofFile(utf8Text(bytes.value, basename(path)), path) : bytes
}

/** A result whose problems name the file they are about. */
export const ofFile = <Value>(result: Result<Value>, path: string): Result<Value> => {
  if (result.ok) return result
  const [first, ...rest] = result.problems
  const named = (each: typeof first) => ({ ...each, at: { ...each.at, file: path } })
  return fail(named(first), ...rest.map(named))
}
