import { readdir, stat } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { newPassId } from '../../core/job/recordIds.ts'
import type { FoundPart } from '../../core/transfer/joinOrder.ts'
import type { Override } from '../../core/transfer/override.ts'
import type { PassFinding, PassOutput, PassRecord } from '../../core/transfer/passRecord.ts'
import { isSequence } from '../../core/transfer/transferSettings.ts'
import { filesChecksum } from '../../media/filesChecksum.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { sha256OfFile } from '../../media/node/sha256OfFile.ts'
import { checkWritten, type PassTally } from '../../work/checkWritten.ts'
import { headPicturesOf } from '../../work/headPictures.ts'
import type { Pace } from '../../work/pace.ts'
import { kernelHere } from '../kernelHere.ts'
import type { TransferTask } from './transferTask.ts'

/** A pass that was joined, and what its record is to say besides what is found in it. */
export type MadePass = {
  readonly task: TransferTask
  readonly out: string
  readonly parts: readonly FoundPart[]
  readonly begunAt: string
  readonly overrides: readonly Override[]
}

/** The checksum of what lies at `out` now; of a sequence, of the list of its pictures' checksums. */
const checksumNow = async (out: string, isFolder: boolean): Promise<string> => {
  if (!isFolder) return sha256OfFile(out)
  const names = (await readdir(out)).filter((name) => name !== 'checksums.txt')
  const sums: { name: string; sha256: string }[] = []
  for (const name of names) sums.push({ name, sha256: await sha256OfFile(join(out, name)) })
  return filesChecksum(sums)
}

const outputOf = async ({ task, out, parts }: MadePass): Promise<PassOutput> => {
  const { format } = task.plan.settings
  const { frames } = task.plan.timeline
  const name = basename(out)
  if (!isSequence(format)) {
    const { size } = await stat(out)
    return { name, files: 1, frames, bytes: size, sha256: await sha256OfFile(out) }
  }
  const files = parts.flatMap(({ manifest }) => manifest.files)
  const bytes = files.reduce((sum, each) => sum + each.bytes, 0)
  return { name, files: files.length, frames, bytes, sha256: filesChecksum(files) }
}

const tallyOf = (parts: readonly FoundPart[]): PassTally => {
  const sum = (name: 'limitedPixels' | 'limitedFrames' | 'clippedPixels'): number =>
    parts.reduce((total, { manifest }) => total + manifest[name], 0)
  return {
    limitedPixels: sum('limitedPixels'),
    limitedFrames: sum('limitedFrames'),
    clippedPixels: sum('clippedPixels'),
  }
}

const soundOf = ([first]: readonly FoundPart[]): PassFinding => {
  const sound = first?.manifest.sound
  return sound
    ? {
        check: 'sound',
        standing: 'right',
        says: `The scan's ${sound.codec} sound goes along as it is.`,
      }
    : { check: 'sound', standing: 'told', says: first?.manifest.noSound ?? '' }
}

/** Reads back what was written, and makes the record of the pass. */
export const afterPass = async (
  made: MadePass,
  version: string,
  onPace: (pace: Pace) => void,
): Promise<Result<PassRecord>> => {
  const { task, out, parts, overrides, begunAt } = made
  const { plan } = task
  const isFolder = isSequence(plan.settings.format)
  const kernel = await kernelHere()
  if (!kernel.ok) return kernel
  const scan = await openMediaNode(task.mediaPath)
  if (!scan.ok) return scan
  const written = await openMediaNode(out)
  if (!written.ok) {
    scan.value.close()
    return fail(
      problem(
        'cannot-read',
        `${out} was written and cannot be opened: ${written.problems[0].says}`,
      ),
    )
  }
  const output = await outputOf(made)
  const heldFrames = parts.flatMap(({ manifest }) => manifest.held.map(({ frame }) => frame))
  try {
    const findings = await checkWritten(
      {
        ...{ plan, scan: scan.value, written: written.value, kernel: kernel.value },
        ...headPicturesOf(plan),
        ...{ output, tally: tallyOf(parts), heldFrames, sound: soundOf(parts) },
        checksumAgain: () => checksumNow(out, isFolder),
      },
      onPace,
    )
    return ok({
      id: newPassId(),
      reel: plan.reel.id,
      begunAt,
      endedAt: new Date().toISOString(),
      madeWith: `Reelwright ${version} at the command line${isFolder ? '' : ', through ffmpeg'}`,
      settings: plan.settings,
      output,
      decided: task.decided,
      scan: plan.reel.media.checksum,
      overrides,
      findings,
      heldFrames,
    })
  } finally {
    scan.value.close()
    written.value.close()
  }
}
