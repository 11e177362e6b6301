/** The closed list of what can be wrong with an input. The command line maps it to exit statuses. */
export type ProblemCode =
  | 'cannot-read' // the file or stream could not be read at all
  | 'unknown-format' // what the bytes are is not something this program reads
  | 'cannot-decode' // container or codec known, but no decoder here
  | 'malformed' // the syntax is broken
  | 'out-of-range' // a value outside its stated range
  | 'missing' // something required is not there
  | 'conflict' // two things that cannot both hold
  | 'too-large' // a stated limit of size, depth or count is passed
  | 'not-found' // a reference to something that is not there
  | 'newer-version' // written by a later version of this program
  | 'wrong-use' // a command or option used wrongly
  | 'not-stated' // the input leaves open what must be known

/** Where a problem is. Lines and columns count from 1, bytes and frames from 0. */
export type Place = {
  readonly file?: string
  readonly line?: number
  readonly column?: number
  readonly byte?: number
  readonly field?: string
  readonly frame?: number
}

/** One thing wrong: `says` is one sentence that tells what, where and what to do. */
export type Problem = {
  readonly code: ProblemCode
  readonly says: string
  readonly at?: Place
}

export const problem = (code: ProblemCode, says: string, at?: Place): Problem =>
  at === undefined ? { code, says } : { code, says, at }
