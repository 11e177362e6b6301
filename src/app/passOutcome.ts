import { newPassId } from '../core/job/recordIds.ts'
import { PROGRAM_VERSION } from '../core/programVersion.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import type { PassRecord } from '../core/transfer/passRecord.ts'
import type { MadePass } from '../work/passCalls.ts'
import { browserWords } from './browserWords.ts'

/** The record of a pass made here, ended now. */
export const passRecordOf = ({ reel, settings }: PassPlan, made: MadePass): PassRecord => {
  const { begunAt, output, decided, findings, heldFrames, encoding } = made
  const browser = `Reelwright ${PROGRAM_VERSION} in ${browserWords(navigator.userAgent)}`
  return {
    ...{ id: newPassId(), reel: reel.id, begunAt, endedAt: new Date().toISOString() },
    madeWith: encoding === '' ? browser : `${browser}, ${encoding}`,
    ...{ settings, output, decided, scan: reel.media.checksum },
    ...{ overrides: reel.overrides, findings, heldFrames },
  }
}
