import { basename } from 'node:path'
import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { TextFile } from '../core/formats/handOverFiles.ts'
import { fileNameOf } from '../core/formats/listNames.ts'
import { codingOf } from '../core/job/codingOf.ts'
import { cueEnd, cuesOfReel } from '../core/job/cueList.ts'
import type { Job, Reel } from '../core/job/job.ts'
import type { ReelId } from '../core/job/recordIds.ts'
import type { ReportFacts, ScanChecksum } from '../core/report/reportFacts.ts'
import { reportHtml } from '../core/report/reportHtml.ts'
import { toleranceOf } from '../core/tolerance/findProfile.ts'
import type { Kernel } from '../kernel/kernel.ts'
import { filesChecksum } from '../media/filesChecksum.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { MediaError } from '../media/mediaError.ts'
import { openMediaNode } from '../media/node/openMediaNode.ts'
import { scanPaths } from '../media/node/scanPaths.ts'
import { sha256OfFile } from '../media/node/sha256OfFile.ts'
import { checkCue } from '../work/checkTolerance.ts'
import { framePictures } from '../work/framePictures.ts'
import { createPaceKeeper, type Pace } from '../work/pace.ts'
import { reportedLists } from '../work/reportedLists.ts'
import { gatherReport, type ReportSources } from '../work/reportFacts.ts'
import { kernelHere } from './kernelHere.ts'

const checksumOf = async (path: string): Promise<ScanChecksum> => {
  const files: { name: string; sha256: string }[] = []
  for (const each of await scanPaths(path))
    files.push({ name: basename(each), sha256: await sha256OfFile(each) })
  const [only] = files
  return files.length === 1 && only
    ? { sha256: only.sha256, files: 1 }
    : { sha256: filesChecksum(files), files: files.length }
}

/** What a call gives; undefined where the scan is damaged there. */
const unlessDamaged = async <Value>(call: Promise<Value>): Promise<Value | undefined> => {
  try {
    return await call
  } catch (error) {
    if (error instanceof MediaError) return undefined
    throw error
  }
}

/** Pictures and, where they are wanted, verdicts from an open scan; `onFrames` is told of each. */
const sourcesOf = (
  job: Job,
  reel: Reel,
  source: FrameSource,
  kernel: Kernel,
  wantsVerdicts: boolean,
  onFrame: () => void,
): ReportSources => {
  const cues = cuesOfReel(job, reel.id)
  const profile = toleranceOf(job.info.job)
  return {
    pictures: async (request) => {
      const planes = await unlessDamaged(source.read(request.frame))
      onFrame()
      return planes && framePictures(planes, kernel, request)
    },
    verdict: async (index) => {
      const cue = cues[index]
      if (!cue || !wantsVerdicts) return undefined
      const end = cueEnd(cues, index, reel.frames)
      const check = { cue, previous: cues[index - 1], end }
      return unlessDamaged(checkCue(source, kernel, check, codingOf(reel), profile, onFrame))
    },
  }
}

type Made = Pick<ReportFacts, 'cues' | 'held' | 'scan'>

const fromScan = async (
  job: Job,
  reel: Reel,
  path: string,
  wantsVerdicts: boolean,
  onProgress: (pace: Pace) => void,
): Promise<Result<Made>> => {
  const kernel = await kernelHere()
  if (!kernel.ok) return kernel
  const opened = await openMediaNode(path)
  if (!opened.ok) return opened
  const source = opened.value
  try {
    const pictures = cuesOfReel(job, reel.id).length
    const total = pictures + (wantsVerdicts ? reel.frames : 0)
    const pace = createPaceKeeper(total, () => performance.now())
    let done = 0
    const sources = sourcesOf(job, reel, source, kernel.value, wantsVerdicts, () => {
      done++
      onProgress(pace(Math.min(done, total)))
    })
    const gathered = await gatherReport(job, reel, sources)
    return ok({ ...gathered, scan: await checksumOf(path) })
  } finally {
    source.close()
  }
}

const NOTHING: Made = { cues: new Map(), held: new Map(), scan: undefined }

/**
 * The report of a reel as a page of HTML. With the path of its scan it has pictures, the scan's
 * checksum and, where they are wanted, verdicts; without, none of these.
 */
export const makeReportNode = async (
  job: Job,
  reelId: ReelId,
  mediaPath: string | undefined,
  wantsVerdicts: boolean,
  onProgress: (pace: Pace) => void,
): Promise<Result<TextFile>> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  const made =
    mediaPath === undefined
      ? ok(NOTHING)
      : await fromScan(job, reel, mediaPath, wantsVerdicts, onProgress)
  if (!made.ok) return made
  const page = reportHtml({
    job,
    reelId,
    madeOn: new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' }).format(new Date()),
    lists: reportedLists(job, reelId),
    ...made.value,
  })
  return page.ok ? ok({ name: `${fileNameOf(reel)}-report.html`, text: page.value }) : page
}
