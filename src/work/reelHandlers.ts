import { problem } from '../core/base/problem.ts'
import { ok, type Result } from '../core/base/result.ts'
import { buildCensus } from '../core/census/buildCensus.ts'
import { censusBuffers } from '../core/census/censusData.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { MediaError } from '../media/mediaError.ts'
import { checkCue } from './checkTolerance.ts'
import { findShots } from './findShots.ts'
import { makeStill } from './makeStill.ts'
import { type PlayedFrame, playRange } from './playRange.ts'
import type { ReelCalls } from './reelCalls.ts'
import type { Handlers } from './rpc.ts'

type Opener = (files: readonly File[]) => Promise<Result<FrameSource>>

/** The calls of a reel worker, given how media are opened and the kernel is loaded there. */
export const reelHandlers = (
  openMedia: Opener,
  loadKernel: () => Promise<Kernel>,
): Handlers<ReelCalls> => {
  let source: FrameSource | undefined
  let playing: { frames: AsyncGenerator<PlayedFrame>; stop: AbortController } | undefined

  const opened = (): FrameSource => {
    if (!source) throw new MediaError(problem('missing', 'No reel is open; open one first.'))
    return source
  }
  const stop = (): undefined => {
    playing?.stop.abort()
    void playing?.frames.return(undefined)
    playing = undefined
  }

  return {
    open: async ({ files }) => {
      const result = await openMedia(files)
      if (!result.ok) return result
      stop()
      source?.close()
      source = result.value
      return ok(source.facts)
    },
    read: (wanted) => opened().read(wanted),
    still: async ({ frame: wanted, width, height, coding }, { transfer }) => {
      const still = makeStill(await opened().read(wanted), coding, width, height)
      transfer(still.rgb.buffer)
      return still
    },
    play: (plan) => {
      stop()
      const controller = new AbortController()
      playing = { frames: playRange(opened(), plan, controller.signal), stop: controller }
      return undefined
    },
    playNext: async () => {
      const next = await playing?.frames.next()
      return next?.done === false ? next.value : undefined
    },
    stop,
    findShots: (_, { progress, signal }) => findShots(opened(), progress, signal),
    checkCue: async ({ check, coding, profile, wantsCensus }, { progress, signal, transfer }) => {
      let done = 0
      const tellEvery = 10
      const onFrame = () => {
        done++
        if (done % tellEvery === 0) progress(done)
      }
      const kernel = await loadKernel()
      const colours = wantsCensus ? kernel.countColours(coding.range) : undefined
      const verdict = await checkCue(
        opened(),
        kernel,
        check,
        coding,
        profile,
        onFrame,
        signal,
        colours,
      )
      const tally = colours?.tally()
      const census = tally && buildCensus(tally, coding)
      if (census) transfer(...censusBuffers(census))
      return { verdict, census }
    },
  }
}
