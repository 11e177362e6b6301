import { stat } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { sha256OfText } from '../../core/base/sha256.ts'
import { fileNameOf } from '../../core/formats/listNames.ts'
import type { ReelId } from '../../core/job/recordIds.ts'
import { decidedText } from '../../core/transfer/decidedText.ts'
import { partIdentityText } from '../../core/transfer/partIdentity.ts'
import { type PassPlan, passPlan } from '../../core/transfer/passPlan.ts'
import type { TransferFormat } from '../../core/transfer/transferSettings.ts'
import { scanPaths } from '../../media/node/scanPaths.ts'
import { readJobFile } from '../readJobFile.ts'

/** What names a transfer: files, reel and format, as they cross to a worker thread. */
export type TransferNames = {
  readonly jobPath: string
  readonly mediaPath: string
  readonly reelId: string
  readonly format: TransferFormat
}

/** A transfer that can be made: its plan, and what its parts are known by. */
export type TransferTask = {
  readonly plan: PassPlan
  readonly mediaPath: string
  readonly stem: string
  /** SHA-256 of `decidedText`. */
  readonly decided: string
  readonly identity: string
}

const bytesOf = async (path: string): Promise<number | undefined> => {
  const paths = await scanPaths(path).catch(() => undefined)
  if (!paths) return undefined
  const sizes = await Promise.all(paths.map((each) => stat(each).catch(() => undefined)))
  return sizes.reduce<number | undefined>(
    (sum, found) => (sum === undefined || !found ? undefined : sum + found.size),
    0,
  )
}

/** The scan's bytes are those the job has of it; a scan that changed is no part of the same pass. */
const checkScan = async (plan: PassPlan, mediaPath: string): Promise<Result<undefined>> => {
  const { name, bytes } = plan.reel.media
  const there = await bytesOf(mediaPath)
  if (there === undefined)
    return fail(
      problem('cannot-read', `The scan ${mediaPath} is not there; name it with --media.`, {
        file: mediaPath,
      }),
    )
  return there === bytes
    ? ok(undefined)
    : fail(
        problem(
          'conflict',
          `${basename(mediaPath)} has ${there} bytes, and the job was made on ${name} with ${bytes}; name that one with --media.`,
          { file: mediaPath },
        ),
      )
}

/** The transfer that names stand for. */
export const transferTask = async (names: TransferNames): Promise<Result<TransferTask>> => {
  const job = await readJobFile(names.jobPath)
  if (!job.ok) return job
  const reelId = names.reelId as ReelId
  const reel = job.value.reels[reelId]
  const plan = passPlan(job.value, reelId, reel && { ...reel.transfer, format: names.format })
  if (!plan.ok) return plan
  const scan = await checkScan(plan.value, names.mediaPath)
  if (!scan.ok) return scan
  const text = decidedText(plan.value)
  if (!text.ok) return text
  const decided = sha256OfText(text.value)
  const identity = partIdentityText(plan.value, decided)
  if (!identity.ok) return identity
  return ok({
    plan: plan.value,
    mediaPath: names.mediaPath,
    stem: fileNameOf(plan.value.reel),
    decided,
    identity: sha256OfText(identity.value),
  })
}

/** Where a job's scan is looked for when it is not named: beside the job. */
export const mediaBeside = (jobPath: string, name: string): string => join(dirname(jobPath), name)
