import type { Grade } from '../core/colour/grade.ts'
import type { Framing } from '../core/picture/framing.ts'

/** What was copied from a cue, to be carried to others. */
export type Clipboard = { readonly grade: Grade; readonly framing: Framing }
