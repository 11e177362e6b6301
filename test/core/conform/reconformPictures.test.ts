import { resolve } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { planReconform } from '../../../src/core/conform/planReconform.ts'
import type { ReconformPlan } from '../../../src/core/conform/reconformPlan.ts'
import type { ReelPrints } from '../../../src/core/conform/reelPrints.ts'
import { cueEnd, cuesOfReel } from '../../../src/core/job/cueList.ts'
import type { Job } from '../../../src/core/job/job.ts'
import { cuePlacements } from '../../../src/core/shots/cuesFromBoundaries.ts'
import type { FrameSignature } from '../../../src/core/shots/frameSignature.ts'
import {
  type Luma,
  printsOf,
  type Rescan,
  readLuma,
  signaturesOf,
  span,
} from '../../support/recutReel.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { seeded } from '../../support/seeded.ts'

const CLIP = resolve(import.meta.dirname, '../../media/video/bbb-trailer-360p25.webm')

let luma: readonly Luma[] = []
let old: ReelPrints
let job: Job
/** First frames of the shots, and the end of the reel. */
let shots: readonly number[] = []

beforeAll(async () => {
  luma = await readLuma(CLIP)
  old = printsOf(signaturesOf(luma, span(0, luma.length)))
  shots = [0, ...cuePlacements(old.boundaries, old.frames).map(({ first }): number => first)]
  job = sampleJob(shots, undefined, sampleReel({ frames: old.frames }))
  shots = [...shots, old.frames]
}, 120_000)

/** Where each cue ought to begin on a reel of these frames of the old one, and how long it is there. */
const truthOf = (order: readonly number[]) => {
  const cues = cuesOfReel(job, REEL_ID)
  return cues.map((cue, index) => {
    const end = cueEnd(cues, index, old.frames)
    const runs: { from: number; length: number }[] = []
    for (const [n, of] of order.entries()) {
      if (of < cue.first || of >= end) continue
      const last = runs.at(-1)
      if (last && last.from + last.length === n) last.length++
      else runs.push({ from: n, length: 1 })
    }
    const longest = runs.toSorted((a, b) => b.length - a.length)[0]
    return runs.find(({ from, length }) => order[from] === cue.first && length >= 12) ?? longest
  })
}

/** How far off cues are of which 12 frames or more are there, and what becomes of those not there. */
const score = (plan: ReconformPlan | undefined, order: readonly number[]) => {
  const truth = truthOf(order)
  const rows = plan?.rows ?? []
  return {
    off: rows.flatMap(({ first }, index) => {
      const right = truth[index]
      if (!right || right.length < 12) return []
      return [first === undefined ? Number.POSITIVE_INFINITY : Math.abs(first - right.from)]
    }),
    gone: rows.flatMap(({ outcome }, index) => (truth[index] ? [] : [outcome])),
  }
}

/** Shots out of order, some trimmed at either end, three left out. */
const RECUT = [
  ...span(0, 140),
  ...span(280, 330),
  ...span(235, 280),
  ...span(347, 372),
  ...span(405, 415),
  ...span(420, 470),
  ...span(500, 640),
  ...span(756, 812),
  ...span(660, 749),
]

/** A cut by chance: a fifth of the shots left out, many trimmed, half of them elsewhere. */
const anyRecut = (seed: number): readonly number[] => {
  const random = seeded(seed)
  return shots
    .slice(0, -1)
    .flatMap((from, place) => {
      const to = shots[place + 1] ?? from
      const isTrimmed = to - from > 40 && random() < 0.6
      const [head, tail] = [random(), random()].map((part) =>
        isTrimmed ? Math.floor(12 * part) : 0,
      )
      const at = random() < 0.5 ? 0 : random()
      return random() < 0.2 ? [] : [{ frames: span(from + (head ?? 0), to - (tail ?? 0)), at }]
    })
    .toSorted((a, b) => a.at - b.at)
    .flatMap(({ frames }) => frames)
}

const RESCANS: Readonly<Record<string, Rescan>> = {
  'brighter, with less contrast': { gain: 0.8, offset: 0.08, gamma: 0.8 },
  'otherwise in every way': {
    gain: 0.85,
    offset: 0.05,
    gamma: 0.85,
    dx: 2.5,
    dy: 1.5,
    zoom: 1.02,
    grain: 0.04,
  },
}

describe('cues that follow real pictures (test/media/video/bbb-trailer-360p25.webm)', () => {
  const plan = (signatures: readonly FrameSignature[], order: readonly number[]) => {
    const fresh = printsOf(order.map((n) => signatures[n] as FrameSignature))
    return planReconform(job, REEL_ID, old, fresh)
  }

  it.each(Object.keys(RESCANS))(
    'are found to the frame where it is scanned %s',
    (name) => {
      const signatures = signaturesOf(luma, span(0, luma.length), RESCANS[name])
      const recut = score(plan(signatures, RECUT), RECUT)
      expect(recut.off).toEqual(Array(14).fill(0))
      expect(recut.gone).toEqual(Array(4).fill('lost'))
      const whole = [...span(600, 640), ...span(0, luma.length)]
      const all = plan(signatures, whole)
      expect(all?.rows.map(({ cue, first }) => (first ?? 0) - cue.first)).toEqual(
        all?.rows.map(() => 40),
      )
      expect(all?.added.filter(({ first }) => first >= 40)).toEqual([])
      const off: number[] = []
      for (let seed = 100; seed < 102; seed++) {
        const order = anyRecut(seed)
        off.push(...score(plan(signatures, order), order).off)
      }
      expect(off.length).toBeGreaterThan(24)
      expect(off.filter((by) => by === 0).length).toBeGreaterThan(0.93 * off.length)
      expect(Math.max(...off)).toBeLessThanOrEqual(3)
    },
    240_000,
  )

  it('are doubtful where the old reel shows the same picture twice, and say where', () => {
    const order = [...span(227, 280), ...span(415, 460), ...span(227, 280), ...span(756, 790)]
    const signatures = signaturesOf(luma, order)
    const frames = order.length
    const twice = sampleJob([0, 53, 98, 151], undefined, sampleReel({ frames }))
    const fresh = printsOf([...signatures.slice(151), ...signatures.slice(0, 53)])
    const made = planReconform(twice, REEL_ID, printsOf(signatures), fresh)
    const rows = made?.rows ?? []
    expect(rows[3]?.first).toBe(0)
    expect([rows[0]?.outcome, rows[2]?.outcome].toSorted()).toEqual(['doubtful', 'lost'])
    const doubtful = rows.find(({ outcome }) => outcome === 'doubtful')
    expect(doubtful?.first).toBe(34)
    expect(doubtful?.says).toMatch(/^Its picture is as much like frame \d+ of the old reel\.$/u)
  })

  it('follow a picture that comes twice by what comes after it', () => {
    const order = [...span(227, 280), ...span(415, 460), ...span(227, 280), ...span(756, 790)]
    const signatures = signaturesOf(luma, order)
    const twice = sampleJob([0, 53, 98, 151], undefined, sampleReel({ frames: order.length }))
    const fresh = printsOf([...signatures.slice(98), ...signatures.slice(0, 98)])
    const made = planReconform(twice, REEL_ID, printsOf(signatures), fresh)
    expect(made?.rows.map(({ outcome, first }) => [outcome, first])).toEqual([
      ['follows', 87],
      ['follows', 87 + 53],
      ['follows', 0],
      ['follows', 53],
    ])
  })

  it('never follow black by itself', () => {
    const black: FrameSignature = {
      luma: new Float32Array(64 * 36),
      cb: new Float32Array(16 * 9),
      cr: new Float32Array(16 * 9),
    }
    const leader = Array.from({ length: 40 }, () => black)
    const [a, b] = [signaturesOf(luma, span(235, 275)), signaturesOf(luma, span(420, 460))]
    const made = planReconform(
      sampleJob([0, 40, 80, 120], undefined, sampleReel({ frames: 160 })),
      REEL_ID,
      printsOf([...leader, ...a, ...leader, ...b]),
      printsOf([...a, ...b, ...leader]),
    )
    const outcomes = made?.rows.map(({ outcome, first }) => [outcome, first]) ?? []
    expect(outcomes[1]).toEqual(['follows', 0])
    expect(outcomes[3]).toEqual(['follows', 40])
    for (const place of [0, 2]) expect(outcomes[place]?.[0]).not.toBe('follows')
  })
})
