import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import type { PassFinding, PassOutput } from '../../core/transfer/passRecord.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import type { FrameSource } from '../../media/frameSource.ts'
import type { CarriedSound } from '../../media/videoTools.ts'
import { checkWritten } from '../checkWritten.ts'
import { headPicturesOf } from '../headPictures.ts'
import type { PassOrder } from '../passCalls.ts'
import type { DoneSegment } from './passStore.ts'
import type { PassTools } from './passTools.ts'

export type WrittenFiles = {
  readonly order: PassOrder
  readonly tools: PassTools
  readonly source: FrameSource
  readonly kernel: Kernel
  readonly segments: readonly DoneSegment[]
  readonly output: PassOutput
  readonly files: readonly File[]
  readonly checksumAgain: () => Promise<string>
  readonly sound: CarriedSound
  readonly onFrames: (done: number, total: number) => void
  readonly signal: AbortSignal
}

const sum = (
  segments: readonly DoneSegment[],
  name: 'limitedPixels' | 'limitedFrames' | 'clippedPixels',
): number => segments.reduce((total, each) => total + each[name], 0)

/** Opens what a pass wrote as any scan is opened, and tells what is right and wrong with it. */
export const readBack = async (work: WrittenFiles): Promise<Result<readonly PassFinding[]>> => {
  const { order, tools, source, kernel, segments, output, files, sound, signal } = work
  const opened = await tools.openMedia(files)
  if (!opened.ok)
    return fail(
      problem(
        'cannot-read',
        `${output.name} was written and cannot be opened: ${opened.problems[0].says}`,
        { file: output.name },
      ),
    )
  const written = opened.value
  try {
    return ok(
      await checkWritten(
        {
          ...{ plan: order.plan, scan: source, written, kernel, output },
          ...headPicturesOf(order.plan),
          tally: {
            limitedPixels: sum(segments, 'limitedPixels'),
            limitedFrames: sum(segments, 'limitedFrames'),
            clippedPixels: sum(segments, 'clippedPixels'),
          },
          heldFrames: segments.flatMap(({ heldFrames }) => heldFrames),
          checksumAgain: work.checksumAgain,
          sound: {
            check: 'sound',
            standing: sound.isCarried ? 'right' : 'told',
            says: sound.says,
          },
        },
        ({ done, total }) => work.onFrames(done, total),
        signal,
      ),
    )
  } finally {
    written.close()
  }
}
