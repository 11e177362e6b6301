import { type Problem, problem } from '../../core/base/problem.ts'

/** What a browser's file system says, by the names of its errors (WHATWG File System, Web IDL). */
const SAYS: Readonly<Record<string, (name: string) => string>> = {
  QuotaExceededError: (name) =>
    `There is no room left to write ${name}; make room, then go on with the pass.`,
  NotAllowedError: (name) =>
    `The browser may no longer write ${name}; allow it again, then go on with the pass.`,
  NoModificationAllowedError: (name) =>
    `${name} is in use or cannot be changed; close what else uses it, then go on with the pass.`,
  NotFoundError: (name) =>
    `${name}, or the folder it is in, has gone; bring it back, then go on with the pass.`,
  NotReadableError: (name) =>
    `${name} can no longer be read; bring it back, then go on with the pass.`,
  InvalidStateError: (name) =>
    `${name} was changed by something else meanwhile; go on with the pass to write it again.`,
}

/** Why storage refused, told of what was being written; undefined where it is no such thing. */
export const storageProblem = (error: unknown, name: string): Problem | undefined => {
  if (!(error instanceof Error)) return undefined
  const says = SAYS[error.name]
  return says && problem('cannot-read', says(name), { file: name })
}
