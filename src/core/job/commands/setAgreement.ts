import type { Result } from '../../base/result.ts'
import { agreementOf } from '../agreementOf.ts'
import type { LabelledChange } from '../history.ts'
import type { AgreementState, Cue, Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { editCues } from './cueCommand.ts'

const LABELS: Readonly<Record<AgreementState, string>> = {
  open: 'Open',
  agreed: 'Agree',
  asked: 'Ask for changes',
}

const withAgreement = (cue: Cue, agreement: AgreementState): Cue => {
  if (agreementOf(cue) === agreement) return cue
  const { grade, framing } = cue
  return { ...cue, agreement, agreedLook: agreement === 'agreed' ? { grade, framing } : null }
}

/**
 * Says of cues that they are open, agreed, or that changes are asked. What is agreed is the grade
 * and framing as they are now: agreeing to a cue that was changed since agrees to what it became.
 */
export const setAgreement = (
  job: Job,
  ids: readonly CueId[],
  agreement: AgreementState,
): Result<LabelledChange> =>
  editCues(job, ids, LABELS[agreement], (cue) => withAgreement(cue, agreement))
