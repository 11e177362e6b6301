import type { FindingStanding, PassFinding } from '../core/transfer/passRecord.ts'
import type { AppStore } from './appStore.ts'
import type { Progress } from './state.ts'

/** What a pass is doing: writing frames, making one file of its parts, or reading back what it wrote. */
export type PassPhase = 'writing' | 'joining' | 'checking'

/** A pass under way. */
export type PassRun = {
  /** Name of the file or folder it writes. */
  readonly name: string
  readonly phase: PassPhase
  readonly progress: Progress
  readonly isPaused: boolean
  /** Written frames that were done before, by the pass this one goes on with. */
  readonly doneBefore: number
  /** Frames of the reel that could not be decoded and show the one before. */
  readonly heldFrames: readonly number[]
}

/** A pass that was begun and not finished, on this computer. */
export type UnfinishedPass = {
  readonly name: string
  /** When it was begun, UTC by ISO 8601. */
  readonly begunAt: string
  readonly done: number
  readonly total: number
  /** Why it cannot be gone on with, as that the job has changed; undefined where it can. */
  readonly hindrance: string | undefined
}

/** What the last pass of this session came to. */
export type PassOutcome = {
  readonly name: string
  readonly standing: FindingStanding
  readonly findings: readonly PassFinding[]
}

/** What is known on this computer for the transfer of the reel on screen. */
export type Transferring = {
  /** Checksum of the scan that is open, taken in this session; undefined: not yet. */
  readonly taken: string | undefined
  /** While the checksum is being taken. */
  readonly taking: Progress | undefined
  /** Bytes the browser has room for; undefined where it does not say. */
  readonly room: number | undefined
  readonly run: PassRun | undefined
  readonly unfinished: UnfinishedPass | undefined
  readonly outcome: PassOutcome | undefined
  /** SHA-256 of all that would decide a pass now (`decidedText`), while its page is shown. */
  readonly decidedNow: string | undefined
}

export const INITIAL_TRANSFERRING: Transferring = {
  taken: undefined,
  taking: undefined,
  room: undefined,
  run: undefined,
  unfinished: undefined,
  outcome: undefined,
  decidedNow: undefined,
}

export const setTransferring = (store: AppStore, change: Partial<Transferring>): void =>
  store.setState({ transferring: { ...store.getState().transferring, ...change } })

/** Whether a pass is at work; one that is paused leaves the machine to others. */
export const isPassAtWork = ({ run }: Transferring): boolean => run !== undefined && !run.isPaused
