import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { codingOf } from '../../src/core/job/codingOf.ts'
import { cueEnd, cuesOfReel } from '../../src/core/job/cueList.ts'
import { newHistory } from '../../src/core/job/history.ts'
import type { Job } from '../../src/core/job/job.ts'
import { frame } from '../../src/core/time/frame.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { loadKernel } from '../../src/kernel/loadKernel.ts'
import type { FrameSource } from '../../src/media/frameSource.ts'
import { valuesAtFrame } from '../../src/store/queries.ts'
import { type AppState, INITIAL_STATE } from '../../src/store/state.ts'
import { checkCue } from '../../src/work/checkTolerance.ts'
import { seeded, shadedPlanes } from '../kernel/randomPictures.ts'
import { REEL_ID, sampleJob, sampleReel } from '../support/sampleJob.ts'
import { appOverCues } from './growthApp.ts'
import { CUE_FRAMES, jobOf, randomGrade } from './growthJobs.ts'

/** Small, so that what grows with the job is not lost in what a picture costs. */
const WIDTH = 32
const HEIGHT = 18
/** Cues of a small job, and so frames of a block: a hundred. */
const FEW = 10
const MANY = 10_000
const BLOCK = FEW * CUE_FRAMES
/** Cues that the app has yet to measure. */
const NEW = 1000
const FRAMES = MANY * CUE_FRAMES
/** How often what is held is looked at; the first time is what the last is compared with. */
const LOOK_EVERY = 1000
/** Only after so many frames is all compiled as it will be. */
const WARMING = 10_000
/** One block of so many is measured, from the first cues to the last. */
const STRIDE = 4

/** The memory of the kernel, as it last grew. */
let kernelBytes = 0
const { grow } = WebAssembly.Memory.prototype
WebAssembly.Memory.prototype.grow = function (pages) {
  const before = grow.call(this, pages)
  kernelBytes = this.buffer.byteLength
  return before
}

const [, , root = '.'] = process.argv
const loaded = await loadKernel(readFileSync(join(root, '.cache/kernel/kernel.wasm')))
if (!loaded.ok) throw new Error(loaded.problems[0].says)
const kernel = loaded.value

const picturesRandom = seeded(1)
const pictures = Array.from({ length: 64 }, () =>
  shadedPlanes(picturesRandom, '420', 8, WIDTH, HEIGHT),
)
const pictureAt = (at: number) => pictures[at % pictures.length] as (typeof pictures)[number]

/** A reel whose frames need no decoding. */
const sourceOf = ({ frames }: { readonly frames: number }) =>
  ({
    read: async (at) => pictureAt(at),
    readRange: async function* (from, to) {
      for (let at: number = from; at < Math.min(to, frames); at++)
        yield { frame: frame(at), planes: pictureAt(at) }
    },
    close: () => undefined,
  }) satisfies Omit<FrameSource, 'facts'> as unknown as FrameSource

/** Cues `from` up to `to` of a job measured as the command line and the app's worker do it. */
const check = async (job: Job, from: number, to: number): Promise<void> => {
  const reel = job.reels[REEL_ID]
  if (!reel) throw new Error('no reel')
  for (let i = from; i < to; i++) {
    const cues = cuesOfReel(job, REEL_ID)
    const cue = cues[i]
    if (!cue) throw new Error(`no cue ${i}`)
    const end = cueEnd(cues, i, reel.frames)
    const part = { cue, previous: cues[i - 1], end }
    const verdict = await checkCue(
      sourceOf(reel),
      kernel,
      part,
      codingOf(reel),
      EBU_R103_V3,
      () => undefined,
    )
    if (verdict?.frames !== CUE_FRAMES) throw new Error(`cue ${i} was not measured`)
  }
}

const stateOf = (job: Job): AppState => ({
  ...INITIAL_STATE,
  history: newHistory(job),
  reelId: REEL_ID,
})

/** Frames from `first` on as the app shows them: the values in force looked up, then measured. */
const show = (state: AppState, first: number): void => {
  for (let at = first; at < first + BLOCK; at++) {
    const values = valuesAtFrame(state, frame(at))
    if (!values) throw new Error(`no cue at frame ${at}`)
    const input = {
      planes: pictureAt(at),
      coding: { matrix: 'bt709', range: 'narrow' },
      grade: values.grade,
      framing: values.framing,
    } as const
    kernel.measurePicture(input, 'bt709', EBU_R103_V3, { histograms: true })
  }
}

/** Microseconds of processor time a frame. */
const timed = async (work: () => Promise<void> | void): Promise<number> => {
  const begun = process.cpuUsage()
  await work()
  const { user, system } = process.cpuUsage(begun)
  return (user + system) / BLOCK
}

/** Bytes that the process holds once what nobody needs is gone. */
const held = () => {
  globalThis.gc?.()
  const { rss, heapUsed, arrayBuffers } = process.memoryUsage()
  return { rss, used: heapUsed + arrayBuffers, kernel: kernelBytes }
}

/**
 * Ten cues at a time of a job of ten thousand, and the same in a job of ten, in turn: frames and
 * cues are alike, and only the size of the job differs.
 */
const overCues = async () => {
  const many = jobOf(MANY, seeded(2))
  const few = seeded(2)
  const manyState = stateOf(many)
  const times = { checkMany: [], checkFew: [], showMany: [], showFew: [] } as Record<
    'checkMany' | 'checkFew' | 'showMany' | 'showFew',
    number[]
  >
  for (let block = 0; block < MANY / FEW; block += STRIDE) {
    const job = jobOf(FEW, few)
    const state = stateOf(job)
    const works = {
      checkMany: () => check(many, block * FEW, (block + 1) * FEW),
      checkFew: () => check(job, 0, FEW),
      showMany: () => show(manyState, block * BLOCK),
      showFew: () => show(state, 0),
    }
    const names = Object.keys(works) as (keyof typeof works)[]
    for (const n of names.keys()) {
      const name = names[(n + block / STRIDE) % names.length] as keyof typeof works
      times[name].push(await timed(works[name]))
    }
  }
  return times
}

/** One cue of `count` frames: microseconds a frame of each block, and memory every so often. */
const overFrames = async (count: number) => {
  const reel = sampleReel({ frames: count })
  const job = sampleJob([0], (cue) => ({ ...cue, grade: randomGrade(seeded(3)) }), reel)
  const [cue] = cuesOfReel(job, REEL_ID)
  if (!cue) throw new Error('no cue')
  const blocks = new Float64Array(count / BLOCK)
  const memory: ReturnType<typeof held>[] = []
  let done = 0
  let begun = process.cpuUsage()
  const onFrame = () => {
    done++
    if (done % BLOCK !== 0) return
    const { user, system } = process.cpuUsage(begun)
    blocks[done / BLOCK - 1] = (user + system) / BLOCK
    if (done % LOOK_EVERY === 0) memory.push(held())
    begun = process.cpuUsage()
  }
  const part = { cue, previous: undefined, end: frame(count) }
  const verdict = await checkCue(
    sourceOf(reel),
    kernel,
    part,
    codingOf(reel),
    EBU_R103_V3,
    onFrame,
    undefined,
    kernel.countColours('narrow'),
  )
  if (verdict?.frames !== count) throw new Error('not all frames were measured')
  return { blocks: [...blocks], memory }
}

// For the engine to compile.
await check(jobOf(MANY / 20, seeded(4)), 0, MANY / 20)
await overFrames(WARMING)
const frames = await overFrames(FRAMES)
const cues = await overCues()
// As many are new in both jobs, so that what is done once weighs alike.
const app = { many: await appOverCues(MANY, NEW), few: await appOverCues(NEW + FEW, NEW) }
console.log(JSON.stringify({ cues, frames, app }))
