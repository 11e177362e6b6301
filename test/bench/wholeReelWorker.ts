import { kernelHere } from '../../src/app/worker/kernelHere.ts'
import { cueEnd } from '../../src/core/job/cueList.ts'
import type { Cue } from '../../src/core/job/job.ts'
import { newCue } from '../../src/core/job/newCue.ts'
import type { CueId, ReelId } from '../../src/core/job/recordIds.ts'
import type { Coding } from '../../src/core/picture/planes.ts'
import { cuePlacements } from '../../src/core/shots/cuesFromBoundaries.ts'
import { frame } from '../../src/core/time/frame.ts'
import { rate } from '../../src/core/time/rate.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { openMedia } from '../../src/media/browser/openMedia.ts'
import type { FrameSource } from '../../src/media/frameSource.ts'
import { findShots } from '../../src/work/findShots.ts'
import { reelHandlers } from '../../src/work/reelHandlers.ts'
import { BENCH_GRADE } from './benchGrade.ts'

const ROUNDS = 3
/** Frames measured first, for the engine to compile. */
const WARMING = 60
const CODING: Coding = { matrix: 'bt709', range: 'narrow' }

/** Milliseconds that the reel takes, all its frames. */
type Round = { readonly decoding: number; readonly checking: number; readonly counting: number }

/** The reel's cues as the app has them once its shots are found, each of them graded. */
const foundCues = async (source: FrameSource): Promise<readonly Cue[]> => {
  const { boundaries, frames } = await findShots(source, () => undefined)
  const places = [
    { first: frame(0), ramp: 0, kind: 'start', confidence: 1 } as const,
    ...cuePlacements(boundaries, frames),
  ]
  return places.map(({ first, ramp, ...boundary }, i) => ({
    ...newCue(`cue-${i}` as CueId, 'reel' as ReelId, first, boundary, ramp),
    grade: BENCH_GRADE,
  }))
}

const UNTOLD = {
  progress: () => undefined as never,
  signal: new AbortController().signal,
  transfer: () => undefined,
}

/** Measures the reel's frames as the app does: a call of its reel worker for each cue. */
const check = async (
  handlers: ReturnType<typeof reelHandlers>,
  cues: readonly Cue[],
  frames: number,
  wantsCensus: boolean,
): Promise<void> => {
  let measured = 0
  for (const [i, cue] of cues.entries()) {
    const { verdict, census } = await handlers.checkCue(
      {
        check: { cue, previous: cues[i - 1], end: cueEnd(cues, i, frames) },
        coding: CODING,
        profile: EBU_R103_V3,
        rate: rate(24),
        wantsCensus,
        wantsLook: wantsCensus,
      },
      UNTOLD,
    )
    measured += verdict?.frames ?? 0
    if (wantsCensus && !census) throw new Error(`no colours of cue ${i + 1}`)
  }
  if (measured !== frames) throw new Error(`${measured} frames of ${frames} were measured`)
}

const timed = async (work: () => Promise<void>): Promise<number> => {
  const begun = performance.now()
  await work()
  return performance.now() - begun
}

const rounds = async (file: File) => {
  const opened = await openMedia([file])
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const source = opened.value
  const { frames } = source.facts
  const cues = await foundCues(source)
  const handlers = reelHandlers(openMedia, kernelHere)
  await handlers.open({ files: [file] }, UNTOLD)
  const works: Readonly<Record<keyof Round, () => Promise<void>>> = {
    decoding: async () => {
      for await (const { planes } of source.readRange(frame(0), frame(frames))) void planes
    },
    checking: () => check(handlers, cues, frames, false),
    counting: () => check(handlers, cues, frames, true),
  }
  const names = Object.keys(works) as (keyof Round)[]
  await check(handlers, cues.slice(0, 1), Math.min(WARMING, frames), true)
  const all: Round[] = []
  // Each work begins a round in turn.
  for (let i = 0; i < ROUNDS; i++) {
    const round = { decoding: 0, checking: 0, counting: 0 }
    for (const n of [0, 1, 2]) {
      const name = names[(n + i) % 3] as keyof Round
      round[name] = await timed(works[name])
    }
    all.push(round)
  }
  source.close()
  return { rounds: all, frames, cues: cues.length }
}

self.addEventListener('message', async ({ data }: MessageEvent<string>) => {
  try {
    const response = await fetch(data)
    self.postMessage(await rounds(new File([await response.blob()], 'clip.mp4')))
  } catch (error) {
    self.postMessage(String(error))
  }
})
