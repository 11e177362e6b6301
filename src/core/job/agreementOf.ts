import { sameGrade } from '../colour/grade.ts'
import { sameFraming } from '../picture/framing.ts'
import type { AgreementState, Cue } from './job.ts'

/** How a cue stands with who agrees to it: as was said of it, or changed since it was agreed. */
export type Agreement = AgreementState | 'changed'

/**
 * How a cue stands. It is 'changed' where its grade or framing is not what was agreed; brought back
 * to that, by undo or by hand, it is agreed as before.
 */
export const agreementOf = ({ agreement, agreedLook, grade, framing }: Cue): Agreement => {
  if (agreement !== 'agreed' || agreedLook === null) return agreement
  const isAsAgreed = sameGrade(agreedLook.grade, grade) && sameFraming(agreedLook.framing, framing)
  return isAsAgreed ? 'agreed' : 'changed'
}
