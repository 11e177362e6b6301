import type { Problem } from '../core/base/problem.ts'

/** A problem met while decoding, when a stream that opened well turns out bad later on. */
export class MediaError extends Error {
  readonly problem: Problem
  constructor(problem: Problem) {
    super(problem.says)
    this.name = 'MediaError'
    this.problem = problem
  }
}
