import type { Result } from '../core/base/result.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import type { PassFinding, PassOutput } from '../core/transfer/passRecord.ts'
import type { Pace } from './pace.ts'

/** Where a pass writes: a folder of pictures, or one file; undefined: a file of the browser's own. */
export type PassTarget =
  | { readonly kind: 'folder'; readonly folder: FileSystemDirectoryHandle }
  | { readonly kind: 'file'; readonly file: FileSystemFileHandle | undefined }

export type PassOrder = {
  readonly plan: PassPlan
  /** The files of the scan. */
  readonly scan: readonly File[]
  /** What the unfinished pass is kept by: see `passKey`. */
  readonly key: string
  /** What names of pictures begin with. */
  readonly stem: string
  /** The name of a file of the browser's own. */
  readonly fileName: string
  readonly target: PassTarget
  /** Whether it goes on with the pass that is kept. */
  readonly goesOn: boolean
}

export type PassNews = {
  readonly phase: 'writing' | 'joining' | 'checking'
  readonly pace: Pace
  readonly doneBefore: number
  readonly heldFrames: readonly number[]
}

export type MadePass = {
  readonly output: PassOutput
  readonly findings: readonly PassFinding[]
  readonly heldFrames: readonly number[]
  readonly begunAt: string
  readonly decided: string
  /** Codec and quality in words; empty of sequences. */
  readonly encoding: string
  /** What was written, where it lies in the browser's own storage. */
  readonly file: File | undefined
}

/** What the pass worker does. */
export type PassCalls = {
  readonly make: {
    readonly args: PassOrder
    readonly progress: PassNews
    readonly answer: Result<MadePass>
  }
  readonly pause: {
    readonly args: boolean
    readonly progress: never
    readonly answer: undefined
  }
  /** Holds a lock of this name until the worker ends, by which its end is known. */
  readonly hold: {
    readonly args: string
    readonly progress: never
    readonly answer: undefined
  }
}
