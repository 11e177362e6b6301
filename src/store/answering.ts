import type { AnswerSays } from '../core/agreement/answer.ts'
import { setAgreement } from '../core/job/commands/setAgreement.ts'
import type { CueId } from '../core/job/recordIds.ts'
import type { AppStore } from './appStore.ts'
import { perform } from './document.ts'

/** Says of cues at the job itself how they stand, now, in nobody's name. */
export const sayHere = (store: AppStore, ids: readonly CueId[], says: AnswerSays): boolean =>
  perform(store, (job) => setAgreement(job, ids, says, { by: '', at: new Date().toISOString() }))
