import { ok, type Result } from '../../core/base/result.ts'
import { applyImport } from '../../core/conform/applyImport.ts'
import type { ImportOptions } from '../../core/conform/importPlan.ts'
import { planImport } from '../../core/conform/planImport.ts'
import { suggestImport } from '../../core/conform/suggestImport.ts'
import { readList } from '../../core/formats/readList.ts'
import { applyChange } from '../../core/job/change.ts'
import { newCueId } from '../../core/job/recordIds.ts'
import type { TextOfBytes } from '../../media/textOfBytes.ts'
import { ofFile } from '../readBytes.ts'
import type { ImportStep, ImportTask } from './importStep.ts'
import { planLines, planRecord } from './planWords.ts'

/** Brings the cues or grades of a list into a job. `asked` is what the person said; the rest is suggested. */
export const importList = (
  { job, reel, path }: ImportTask,
  { text, told }: TextOfBytes,
  asked: Partial<ImportOptions>,
): Result<ImportStep> => {
  const list = ofFile(readList(path, text, reel), path)
  if (!list.ok) return list
  const whole = { ...list.value, notTaken: [...told, ...list.value.notTaken] }
  const options = { ...suggestImport(job, reel.id, whole), ...asked }
  const plan = planImport(job, reel.id, whole, options)
  const done = ofFile(applyImport(job, reel.id, plan, newCueId), path)
  if (!done.ok) return done
  return ok({
    job: applyChange(job, done.value.change),
    lines: planLines(plan, job, reel),
    told: planRecord(plan, job, reel),
  })
}
