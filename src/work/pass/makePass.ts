import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import type { FrameSource } from '../../media/frameSource.ts'
import { MediaError } from '../../media/mediaError.ts'
import type { MadePass, PassNews, PassOrder } from '../passCalls.ts'
import { beginPass, outputName, type ReadyPass } from './beginPass.ts'
import { clearFinished } from './finishedFiles.ts'
import { finishPass } from './finishPass.ts'
import type { Gate } from './gate.ts'
import { withPassLocks } from './passLocks.ts'
import { createPassTeller } from './passNews.ts'
import { passSegments } from './passSegments.ts'
import { openPassStore, segmentVideoName } from './passStore.ts'
import type { PassTools } from './passTools.ts'
import { readBack } from './readBack.ts'
import type { SegmentWriter } from './segmentWriter.ts'
import { storageProblem } from './storageProblem.ts'
import { wholeSegments } from './wholeSegments.ts'
import { writePictures } from './writePictures.ts'
import { writeSegments } from './writeSegments.ts'
import { writeVideoRun } from './writeVideoRun.ts'

const writerOf = ({ plan, stem, target }: PassOrder, { video }: ReadyPass) => {
  const { format } = plan.settings
  return (index: number): SegmentWriter => {
    if (video)
      return writeVideoRun(video.tools.beginRun(plan, video.encoding), segmentVideoName(index))
    if (target.kind !== 'folder' || (format !== 'dpx' && format !== 'tiff' && format !== 'png'))
      throw new Error('Bug: a sequence is written to a folder')
    return writePictures(plan, format, stem, target.folder)
  }
}

/** A file that was moved, changed or taken away can no longer be read at all. */
const scanChecker = (files: readonly File[], name: string) => async (): Promise<void> => {
  for (const file of files)
    await file
      .slice(0, 1)
      .arrayBuffer()
      .catch(() => {
        throw new MediaError(
          problem(
            'cannot-read',
            `The scan ${name} has gone or was changed while the pass ran; open it again, then go on with the pass.`,
            { file: name },
          ),
        )
      })
}

type PassRun = {
  readonly order: PassOrder
  readonly tools: PassTools
  readonly gate: Gate
  readonly tell: (news: PassNews) => void
  readonly signal: AbortSignal
}

const runWith = async (run: PassRun, ready: ReadyPass, source: FrameSource) => {
  const { order, tools, gate, tell, signal } = run
  const { plan, key, target, scan } = order
  const root = await tools.storage()
  const store = openPassStore(root, key)
  const teller = createPassTeller(plan.timeline.frames, gate, tell)
  const kernel = await tools.loadKernel()
  teller.doneBefore(0, [])
  const folder = target.kind === 'folder' ? target.folder : undefined
  const whole = await wholeSegments(
    store,
    folder,
    ({ first, end, heldFrames }) => teller.doneBefore(end - first, heldFrames),
    signal,
  )
  const segments = await writeSegments({
    ...{ plan, source, kernel, whole, store, gate, signal },
    segments: passSegments(plan),
    writerFor: writerOf(order, ready),
    checkScan: scanChecker(scan, plan.reel.media.name),
    onFrame: teller.wrote,
  })
  const total = segments.length
  teller.phase('joining', 0, total)
  const onSegment = (done: number) => teller.phase('joining', done, total)
  const finished = await finishPass({ order, ready, store, root, segments, onSegment, signal })
  const findings = await readBack({
    ...{ order, tools, source, kernel, segments, signal, ...finished },
    onFrames: (done, frames) => teller.phase('checking', done, frames),
  })
  if (!findings.ok) return findings
  const [file] = finished.files
  return ok<MadePass>({
    ...{ output: finished.output, findings: findings.value, decided: ready.decided },
    heldFrames: segments.flatMap(({ heldFrames }) => heldFrames),
    begunAt: ready.begun.begunAt,
    encoding: ready.begun.encoding,
    file: target.kind === 'file' && !target.file ? file : undefined,
  })
}

const runLocked = async (run: PassRun): Promise<Result<MadePass>> => {
  const { order, tools } = run
  const root = await tools.storage()
  await clearFinished(root)
  const source = await tools.openMedia(order.scan)
  if (!source.ok) return source
  try {
    const ready = await beginPass(order, tools, openPassStore(root, order.key))
    return ready.ok ? await runWith(run, ready.value, source.value) : ready
  } finally {
    source.value.close()
  }
}

/**
 * Makes a pass, or goes on with it: writes what is missing segment by segment, makes one thing of
 * it and reads that back. Stopped or refused at any place, it can be gone on with. Rejects with
 * the signal's reason where it is stopped; `MediaError` where scan or encoder fail.
 */
export const makePass = async (run: PassRun): Promise<Result<MadePass>> => {
  const { order } = run
  const output = outputName(order)
  try {
    return await withPassLocks(order.key, output, () => runLocked(run))
  } catch (error) {
    if (run.signal.aborted) throw run.signal.reason
    if (error instanceof MediaError) return fail(error.problem)
    const told = storageProblem(error, output)
    if (told) return fail(told)
    throw error
  }
}
