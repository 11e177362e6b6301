import type { FromPreview, PreviewPort, ToPreview } from '../render/previewMessages.ts'
import type { HandOverCalls } from '../work/handOverCalls.ts'
import type { InstrumentCalls } from '../work/instrumentCalls.ts'
import type { ReelCalls } from '../work/reelCalls.ts'
import { type Caller, type CallMap, createCaller } from '../work/rpc.ts'
import type { SolveCalls } from '../work/solveCalls.ts'
import type { SoundCalls } from '../work/soundCalls.ts'

/** The workers of the app: each keeps the interactive side free of another kind of work. */
export type Workers = {
  /** Reads and plays what is on screen. */
  readonly screen: Caller<ReelCalls>
  /** Finds shots and measures cues, which take as long as the reel. */
  readonly passes: Caller<ReelCalls>
  /** Makes the stills of the strip. */
  readonly stills: Caller<ReelCalls>
  readonly instruments: Caller<InstrumentCalls>
  /** Draws the picture, so that the interactive side never waits for graphics. */
  readonly preview: PreviewPort<ToPreview, FromPreview>
  /** Looks for grades and bases that do what is asked of them. */
  readonly solve: Caller<SolveCalls>
  /** Writes what is handed over; started when it is first asked for something. */
  readonly handOver: Caller<HandOverCalls>
  /** Measures sound; started when it is first asked for something. */
  readonly sound: Caller<SoundCalls>
}

const reelWorker = (name: string): Caller<ReelCalls> =>
  createCaller<ReelCalls>(
    new Worker(new URL('./worker/reelWorker.ts', import.meta.url), { type: 'module', name }),
  )

/** A worker that is started by its first call. */
const whenCalled = <Calls extends CallMap>(start: () => Worker): Caller<Calls> => {
  let started: Caller<Calls> | undefined
  return (name, args, options) => {
    started ??= createCaller<Calls>(start())
    return started(name, args, options)
  }
}

const handOverWorker = (): Worker =>
  new Worker(new URL('./worker/handOverWorker.ts', import.meta.url), {
    type: 'module',
    name: 'hand-over',
  })

const soundWorker = (): Worker =>
  new Worker(new URL('./worker/soundWorker.ts', import.meta.url), { type: 'module', name: 'sound' })

export const startWorkers = (): Workers => ({
  screen: reelWorker('screen'),
  passes: reelWorker('passes'),
  stills: reelWorker('stills'),
  instruments: createCaller<InstrumentCalls>(
    new Worker(new URL('./worker/instrumentWorker.ts', import.meta.url), {
      type: 'module',
      name: 'instruments',
    }),
  ),
  preview: new Worker(new URL('./worker/previewWorker.ts', import.meta.url), {
    type: 'module',
    name: 'preview',
  }),
  solve: createCaller<SolveCalls>(
    new Worker(new URL('./worker/solveWorker.ts', import.meta.url), {
      type: 'module',
      name: 'solve',
    }),
  ),
  handOver: whenCalled<HandOverCalls>(handOverWorker),
  sound: whenCalled<SoundCalls>(soundWorker),
})
