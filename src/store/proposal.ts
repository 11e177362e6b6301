import type { Grade } from '../core/colour/grade.ts'
import type { FilmBase } from '../core/film/filmBase.ts'
import type { CueId } from '../core/job/recordIds.ts'

/** A change that is shown on the picture and the instruments, and waits to be kept or left. */
export type Proposal = {
  /** The name of what was asked, as it will stand in the history. */
  readonly label: string
  /** Plain sentences: what it changes and what that does. */
  readonly says: readonly string[]
  readonly change:
    | { readonly kind: 'grade'; readonly cue: CueId; readonly grade: Grade }
    | { readonly kind: 'base'; readonly base: FilmBase }
}
