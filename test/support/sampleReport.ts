import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import type { Cue, Job } from '../../src/core/job/job.ts'
import type { HeldId, PassId } from '../../src/core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { ReportFacts } from '../../src/core/report/reportFacts.ts'
import { reportHtml } from '../../src/core/report/reportHtml.ts'
import { frame } from '../../src/core/time/frame.ts'
import type { Verdict } from '../../src/core/tolerance/verdict.ts'
import { answerOf } from './sampleAnswer.ts'
import { REEL_ID, sampleJob, sampleReel } from './sampleJob.ts'
import { samplePass } from './samplePass.ts'

/** A picture of one grey pixel. */
export const DOT =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg=='

export const HOSTILE = `</title><script>alert("x")</script><img src=x onerror='y'>&amp;\u202e\0`

export const verdict = (change: Partial<Verdict> = {}): Verdict => ({
  profile: 'ebu-r103-v3',
  isInside: true,
  r: { low: -0.01, high: 0.99 },
  g: { low: 0, high: 1 },
  b: { low: 0.02, high: 0.9 },
  y: { low: 0, high: 0.98 },
  worstFrame: frame(7),
  areaOutside: 0,
  areaBelow: 0,
  areaAbove: 0,
  frames: 100,
  framesOutside: 0,
  ...change,
})

const CHANGES: readonly ((cue: Cue) => Partial<Cue>)[] = [
  () => ({}),
  () => ({
    grade: { lift: [0.01, 0, -0.02], gamma: [1.25, 1, 0.8], gain: [1.1, 1, 0.9], saturation: 1.5 },
    framing: { zoom: 1.2, pan: 0.05, tilt: -0.1, rotation: 2.5, squeeze: 2, blanking: 0.25 },
    ramp: 12,
    rampShape: 'eased',
    boundary: { kind: 'dissolve', confidence: 0.62 },
    gradeName: 'warm',
    alternates: [{ name: 'cold', grade: IDENTITY_GRADE }],
    scene: 'quay',
    note: 'Two\nlines',
  }),
  (cue) => ({ answers: [answerOf(cue, {}, { ...IDENTITY_GRADE, saturation: 2 })] }),
  (cue) => ({ answers: [answerOf(cue, { says: 'asked', note: 'Warmer.' })] }),
]

/** A job whose four cues have everything a report tells of, and a held frame. */
export const reportedJob = (): Job => ({
  ...sampleJob([0, 100, 250, 400], (cue, index) => ({ ...cue, ...CHANGES[index]?.(cue) })),
  held: {
    ['held-1' as HeldId]: {
      id: 'held-1' as HeldId,
      reel: REEL_ID,
      frame: frame(300),
      name: 'The quay',
      grade: IDENTITY_GRADE,
      framing: IDENTITY_FRAMING,
    },
  },
  passes: { ['pass-1' as PassId]: samplePass() },
})

/** The same with markup wherever a person, a file or another program can put words. */
export const hostileJob = (): Job => {
  const job = reportedJob()
  const { media } = sampleReel()
  const reel = sampleReel({
    name: HOSTILE,
    lineUps: [{ at: '2026-11-20T09:00:00Z', says: HOSTILE }],
    media: { ...media, name: HOSTILE, container: HOSTILE, codec: HOSTILE },
    base: {
      ...sampleReel().base,
      list: { name: HOSTILE, steps: [{ kind: 'range', low: null, high: [1, 1], clamps: true }] },
    },
  })
  const house = {
    ...{ id: 'house', name: HOSTILE, source: HOSTILE, rgb: null, composite: null },
    ...{ luma: [0, 1] as const, area: 0, filtered: false },
  }
  return {
    ...job,
    info: {
      job: {
        ...{ id: 'job', title: HOSTILE, tolerance: 'house' },
        ...{ profiles: [house], asksAgreement: false },
      },
    },
    reels: { [reel.id]: reel },
    cues: Object.fromEntries(
      cuesOfReel(job, REEL_ID).map((cue) => [
        cue.id,
        {
          ...cue,
          ...{ note: HOSTILE, scene: HOSTILE, gradeName: HOSTILE },
          alternates: [{ name: HOSTILE, grade: IDENTITY_GRADE }],
        },
      ]),
    ),
    held: Object.fromEntries(
      Object.entries(job.held).map(([id, held]) => [id, { ...held, name: HOSTILE }]),
    ),
    passes: Object.fromEntries(
      Object.entries(job.passes).map(([id, pass]) => [
        id,
        {
          ...pass,
          madeWith: HOSTILE,
          output: { ...pass.output, name: HOSTILE },
          overrides: pass.overrides.map((each) => ({ ...each, found: HOSTILE, reason: HOSTILE })),
          findings: pass.findings.map((each) => ({ ...each, says: HOSTILE })),
        },
      ]),
    ),
  }
}

/** What a report is made of, with pictures and verdicts of all cues but the last. */
export const reportFacts = (
  job: Job = reportedJob(),
  change: Partial<ReportFacts> = {},
): ReportFacts => {
  const verdicts = [
    verdict(),
    verdict({ isInside: false, areaOutside: 0.0345, areaAbove: 0.0345, framesOutside: 3 }),
    verdict({ isInside: false, areaOutside: 0.5, areaAbove: 0.2, areaBelow: 0.3 }),
  ]
  const cues = cuesOfReel(job, REEL_ID).flatMap((cue, index) => {
    const known = verdicts[index]
    const pictures = { frame: frame(cue.first + 40), scanned: DOT, graded: DOT }
    return known ? [[cue.id, { pictures, verdict: known }] as const] : []
  })
  return {
    job,
    reelId: REEL_ID,
    madeOn: '27 November 2026',
    cues: new Map(cues),
    held: new Map([['held-1' as HeldId, DOT]]),
    scan: { sha256: 'ab'.repeat(32), files: 1 },
    lists: [
      {
        title: 'A list',
        files: [{ name: 'orlop.csv', sha256: 'cd'.repeat(32) }],
        losses: [
          {
            subject: 'Framing',
            cues: [2],
            says: 'The framing of cue 2.',
            done: 'Left.',
            extent: 'left out',
          },
        ],
      },
    ],
    ...change,
  }
}

/** The page of a report. */
export const reportPage = (facts: ReportFacts = reportFacts()): string => {
  const page = reportHtml(facts)
  if (!page.ok) throw new Error(page.problems[0].says)
  return page.value
}
