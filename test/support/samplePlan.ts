import type { Job } from '../../src/core/job/job.ts'
import { type PassPlan, passPlan } from '../../src/core/transfer/passPlan.ts'
import {
  INITIAL_TRANSFER,
  type TransferSettings,
} from '../../src/core/transfer/transferSettings.ts'
import { REEL_ID, sampleJob } from './sampleJob.ts'

/** The plan of a transfer of a job's one reel. */
export const samplePlan = (
  change: Partial<TransferSettings> = {},
  job: Job = sampleJob(),
): PassPlan => {
  const plan = passPlan(job, REEL_ID, { ...INITIAL_TRANSFER, ...change })
  if (!plan.ok) throw new Error(plan.problems[0].says)
  return plan.value
}
