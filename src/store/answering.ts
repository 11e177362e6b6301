import type { AnswerSays } from '../core/agreement/answer.ts'
import { type Said, setAgreement } from '../core/job/commands/setAgreement.ts'
import type { CueId } from '../core/job/recordIds.ts'
import type { AppStore } from './appStore.ts'
import { perform } from './document.ts'

/** What is added to an answer at the screen. */
export type Added = Omit<Said, 'by' | 'at'> & { readonly alternate?: string | undefined }

/** Says of cues at the job itself how they stand, now, in the name that was given here, if any. */
export const sayHere = (
  store: AppStore,
  ids: readonly CueId[],
  says: AnswerSays,
  { alternate, ...added }: Added = {},
): boolean => {
  const said = { ...added, by: store.getState().agreeing.by.trim(), at: new Date().toISOString() }
  return perform(store, (job) => setAgreement(job, ids, says, said, alternate ?? null))
}
