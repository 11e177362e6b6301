import { PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { NO_PARTICULARS } from '../../src/core/film/particulars.ts'
import type { Cue, Job, Reel } from '../../src/core/job/job.ts'
import { newCue } from '../../src/core/job/newCue.ts'
import type { CueId, ReelId } from '../../src/core/job/recordIds.ts'
import { frame } from '../../src/core/time/frame.ts'
import { rate } from '../../src/core/time/rate.ts'
import { INITIAL_TRANSFER } from '../../src/core/transfer/transferSettings.ts'

export const REEL_ID = 'reel-a' as ReelId

export const cueId = (n: number): CueId => `cue-${n}` as CueId

/** A reel of made-up particulars; the tests that need others say so. */
export const sampleReel = (change: Partial<Reel> = {}): Reel => ({
  id: REEL_ID,
  name: 'Orlop reel 1',
  gauge: '16mm',
  rate: rate(25),
  frames: 1000,
  startCount: 900_000,
  isDropFrame: false,
  base: PRINT_BASE,
  particulars: NO_PARTICULARS,
  guide: null,
  foreign: [],
  lineUps: [],
  transfer: INITIAL_TRANSFER,
  overrides: [],
  media: {
    name: 'orlop-1.mov',
    container: 'MOV',
    codec: 'H.264',
    width: 1920,
    height: 1080,
    displayAspect: 16 / 9,
    depth: 8,
    layout: '420',
    matrix: 'bt709',
    matrixBy: 'file',
    range: 'narrow',
    rangeBy: 'file',
    rateBy: 'file',
    bytes: 123_456,
    checksum: null,
  },
  ...change,
})

/** A job with cues beginning on these frames, cue 1 on the first of them. */
export const sampleJob = (
  firsts: readonly number[] = [0, 100, 250, 400],
  edit: (cue: Cue, index: number) => Cue = (cue) => cue,
  reel: Reel = sampleReel(),
): Job => ({
  info: {
    job: {
      id: 'job',
      title: 'Orlop',
      tolerance: 'ebu-r103-v3',
      profiles: [],
      asksAgreement: false,
    },
  },
  reels: { [reel.id]: reel },
  cues: Object.fromEntries(
    firsts.map((first, index) => {
      const boundary = { kind: index === 0 ? 'start' : 'cut', confidence: 1 } as const
      const cue = newCue(cueId(index + 1), reel.id, frame(first), boundary)
      return [cue.id, edit(cue, index)]
    }),
  ),
  held: {},
  passes: {},
  packs: {},
})
