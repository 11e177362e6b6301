import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { editCues } from './cueCommand.ts'

export const NOTE_LIMIT = 4000

/** Sets the note of a cue: plain text of at most 4,000 characters. */
export const setNote = (job: Job, id: CueId, note: string): Result<LabelledChange> =>
  note.length > NOTE_LIMIT
    ? fail(problem('too-large', `A note holds at most ${NOTE_LIMIT} characters; shorten it.`))
    : editCues(job, [id], 'Note', (cue) => (cue.note === note ? cue : { ...cue, note }))
