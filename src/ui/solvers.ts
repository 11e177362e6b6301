import type { CueId, HeldId } from '../core/job/recordIds.ts'

/** What a cue is to look like: another cue as it is delivered, or a frame held or opened. */
export type MatchReference =
  | { readonly kind: 'cue'; readonly id: CueId }
  | { readonly kind: 'held'; readonly id: HeldId; readonly name: string }

/**
 * What looks for a change and shows it as a proposal. Picked places are followed by themselves:
 * see `togglePicking`.
 */
export type Solvers = {
  readonly bringInside: () => void
  readonly matchTo: (reference: MatchReference) => void
  /** What the dye that kept best is taken to have kept, 0.1…1; looked for anew with it. */
  readonly assumeKept: (part: number) => void
}
