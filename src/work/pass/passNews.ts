import { createPaceKeeper } from '../pace.ts'
import type { PassNews } from '../passCalls.ts'
import type { Gate } from './gate.ts'

/** News is told this often at most: each of it draws the screen anew. */
const EVERY_MS = 100

export type PassTeller = {
  readonly doneBefore: (frames: number, held: readonly number[]) => void
  readonly wrote: (held: number | undefined) => void
  readonly phase: (phase: PassNews['phase'], done: number, total: number) => void
}

/** Tells how a pass is getting on; pauses do not count. */
export const createPassTeller = (
  total: number,
  gate: Gate,
  tell: (news: PassNews) => void,
): PassTeller => {
  let before = 0
  let written = 0
  let heldFrames: readonly number[] = []
  let phase: PassNews['phase'] = 'writing'
  let of = total
  let pace = createPaceKeeper(total, gate.now)
  let toldAt = Number.NEGATIVE_INFINITY
  const news = (done: number, isTold: boolean): void => {
    const at = gate.now()
    if (!isTold && at - toldAt < EVERY_MS) return
    toldAt = at
    const doneBefore = phase === 'writing' ? before : 0
    const now = pace(done)
    tell({ phase, pace: { ...now, done: doneBefore + done, total: of }, doneBefore, heldFrames })
  }
  return {
    doneBefore: (frames, held) => {
      before += frames
      heldFrames = [...heldFrames, ...held]
      pace = createPaceKeeper(total - before, gate.now)
      news(0, true)
    },
    wrote: (held) => {
      written++
      if (held !== undefined) heldFrames = [...heldFrames, held]
      news(written, held !== undefined || before + written === total)
    },
    phase: (next, done, all) => {
      if (next !== phase) pace = createPaceKeeper(all, gate.now)
      const isNew = next !== phase
      phase = next
      of = all
      news(done, isNew || done === all)
    },
  }
}
