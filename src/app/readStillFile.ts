import { problem } from '../core/base/problem.ts'
import { PRINT_BASE } from '../core/film/filmBase.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import { frame } from '../core/time/frame.ts'
import { MediaError } from '../media/mediaError.ts'
import type { ReelCalls } from '../work/reelCalls.ts'
import { createCaller } from '../work/rpc.ts'

/** Reads one picture file. Rejects with a problem where it is none that can be read. */
export type ReadStill = (
  file: File,
) => Promise<{ readonly planes: Planes; readonly coding: Coding }>

const PICTURE = /^(?:PNG|TIFF|DPX)$/u

/**
 * A PNG, TIFF or DPX file as planes, read in a worker of its own. Its R′G′B′ is taken as it is
 * coded: full range where the file states none, a print that needs no base, or printing density
 * where the file says so.
 */
export const readStillFile: ReadStill = async (file) => {
  const worker = new Worker(new URL('./worker/reelWorker.ts', import.meta.url), {
    type: 'module',
    name: 'reference',
  })
  try {
    const call = createCaller<ReelCalls>(worker)
    const opened = await call('open', { files: [file] })
    if (!opened.ok) throw new MediaError(opened.problems[0])
    const { codec, displayAspect, width, height, range = 'full', scanHint } = opened.value
    if (!PICTURE.test(codec))
      throw new MediaError(
        problem(
          'unknown-format',
          `${file.name} is not a still; choose a PNG, TIFF or DPX picture.`,
        ),
      )
    const planes = await call('read', frame(0))
    const pixelAspect = displayAspect / (width / height)
    const base = scanHint ? { ...PRINT_BASE, scan: scanHint } : PRINT_BASE
    return { planes, coding: { matrix: 'bt709', range, base, pixelAspect } }
  } finally {
    worker.terminate()
  }
}
