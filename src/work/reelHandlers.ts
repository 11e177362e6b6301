import { problem } from '../core/base/problem.ts'
import { ok, type Result } from '../core/base/result.ts'
import { buildCensus } from '../core/census/buildCensus.ts'
import { censusBuffers } from '../core/census/censusData.ts'
import { lookBuffers, lookOfCensus, lookOfTally } from '../core/census/lookOfCensus.ts'
import { findStretches } from '../core/conform/findStretches.ts'
import { printBuffers } from '../core/conform/reelPrints.ts'
import { cueFlashes } from '../core/flashes/cueFlashes.ts'
import { createFlashGatherer } from '../core/flashes/flashGatherer.ts'
import { seriesBuffers } from '../core/flashes/flashReport.ts'
import type { Planes } from '../core/picture/planes.ts'
import type { Frame } from '../core/time/frame.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { jpegAddress } from '../media/jpegAddress.ts'
import { MediaError } from '../media/mediaError.ts'
import { createPlanesCache } from '../media/planesCache.ts'
import { checkFlashes } from './checkFlashes.ts'
import { checkCue, checkFrames } from './checkTolerance.ts'
import { findShots } from './findShots.ts'
import { framePictures } from './framePictures.ts'
import { makeStill } from './makeStill.ts'
import { makeStillFile } from './makeStillFile.ts'
import { type PlayedFrame, playRange } from './playRange.ts'
import { fingerprintReel } from './reconformScan.ts'
import type { ReelCalls } from './reelCalls.ts'
import { type ClipEncoder, makeClip } from './review/makeClip.ts'
import { reviewPictures } from './review/reviewPictures.ts'
import type { Handlers } from './rpc.ts'
import { scanChecksum } from './scanChecksum.ts'

/** Bytes of frames that are measured more than once. */
const MOST_AGAIN = 96 * 2 ** 20

type Opener = (files: readonly File[]) => Promise<Result<FrameSource>>

/** The calls of a reel worker, given how media are opened and the kernel is loaded there. */
export const reelHandlers = (
  openMedia: Opener,
  loadKernel: () => Promise<Kernel>,
  encodeClip?: ClipEncoder,
): Handlers<ReelCalls> => {
  let source: FrameSource | undefined
  let openFiles: readonly File[] = []
  let playing: { frames: AsyncGenerator<PlayedFrame>; stop: AbortController } | undefined

  const opened = (): FrameSource => {
    if (!source) throw new MediaError(problem('missing', 'No reel is open; open one first.'))
    return source
  }
  /** Frames that were measured last: the same are measured with one grade after another. */
  const again = createPlanesCache(MOST_AGAIN)
  const readAgain = async (wanted: Frame): Promise<Planes> => {
    const planes = again.get(wanted) ?? (await opened().read(wanted))
    again.put(wanted, planes)
    return planes
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
      again.clear()
      source = result.value
      openFiles = files
      return ok(source.facts)
    },
    read: (wanted) => opened().read(wanted),
    still: async ({ frame: wanted, width, height, coding }, { transfer }) => {
      const still = makeStill(await opened().read(wanted), coding, width, height)
      transfer(still.rgb.buffer)
      return still
    },
    stillFile: async (request, { transfer }) => {
      const made = await makeStillFile(await opened().read(request.frame), request)
      transfer(made.bytes.buffer)
      return made
    },
    pictures: async (request) =>
      framePictures(await opened().read(request.frame), await loadKernel(), request),
    reviewPictures: async (request) =>
      reviewPictures(await opened().read(request.frame), await loadKernel(), request, jpegAddress),
    clip: async (request, { signal }) =>
      encodeClip
        ? makeClip(request, { source: opened(), kernel: await loadKernel() }, encodeClip, signal)
        : null,
    checksum: (_, { progress, signal }) => scanChecksum(openFiles, progress, signal),
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
    fingerprint: async (_, { progress, signal, transfer }) => {
      const prints = await fingerprintReel(opened(), progress, signal)
      transfer(...printBuffers(prints))
      return prints
    },
    findStretches: ({ old, fresh }) => findStretches(old, fresh),
    checkCue: async (
      { check, coding, profile, rate, wantsCensus, wantsLook },
      { progress, signal, transfer },
    ) => {
      let done = 0
      const tellEvery = 10
      const onFrame = () => {
        done++
        if (done % tellEvery === 0) progress(done)
      }
      const kernel = await loadKernel()
      const colours = wantsCensus || wantsLook ? kernel.countColours(coding.range) : undefined
      const { width, height } = opened().facts
      const flashes = createFlashGatherer(width, height, rate)
      const verdict = await checkCue(
        opened(),
        kernel,
        check,
        coding,
        profile,
        onFrame,
        signal,
        colours,
        flashes,
      )
      const tally = colours?.tally()
      const census = tally && wantsCensus ? buildCensus(tally, coding) : undefined
      const look = census ? lookOfCensus(census) : tally && lookOfTally(tally, coding)
      if (census) transfer(...censusBuffers(census))
      if (look) transfer(...lookBuffers(look))
      return { verdict, census, look, flashes: cueFlashes(flashes.report()) }
    },
    checkFlashes: async (request, { progress, signal, transfer }) => {
      const report = await checkFlashes(opened(), await loadKernel(), request, progress, signal)
      if (report) transfer(...seriesBuffers(report))
      return report
    },
    checkFrames: async (request) => checkFrames(readAgain, await loadKernel(), request),
  }
}
