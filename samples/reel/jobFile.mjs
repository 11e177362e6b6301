/**
 * The sample's job as it lies beside the reel: every shot a cue, the first ones graded. The grades
 * are a colourist's first pass over known faults; the rest waits for whoever opens it.
 */
const NO_GRADE = { lift: [0, 0, 0], gamma: [1, 1, 1], gain: [1, 1, 1], saturation: 1 }
const NO_FRAMING = { zoom: 1, pan: 0, tilt: 0 }

const DONE = {
  0: { note: 'Leader cut off by the archive; begins in the fade.' },
  1: {
    grade: {
      ...NO_GRADE,
      gamma: [1.32, 1.34, 1.38],
      gain: [1.12, 1.12, 1.13],
      lift: [0.01, 0.005, 0],
    },
    note: 'Lift the face, keep the water dark.',
  },
  3: {
    grade: { ...NO_GRADE, lift: [-0.005, -0.035, -0.085], gain: [1.1, 1.03, 0.99] },
  },
  5: {
    grade: {
      lift: [-0.11, -0.045, -0.09],
      gamma: [0.95, 1.1, 1],
      gain: [1.05, 1.23, 1.12],
      saturation: 1.2,
    },
    framing: { zoom: 1.04, pan: 0, tilt: 0.005 },
    note: 'Faded print. Next shot faded differently: match to this one.',
  },
  7: { note: 'Clouds far over. Bring the gain down before anything else.' },
}

const KINDS = { cut: 'cut', dissolve: 'dissolve', fade: 'fade-out', 'fade-in': 'start' }

export const jobOf = (truth, media) => ({
  format: 'reelwright-job',
  version: 1,
  info: { id: 'job', title: truth.title, tolerance: 'ebu-r103-v3' },
  reels: [
    {
      id: 'reel-1',
      name: 'Skerrow reel 2',
      gauge: '16mm',
      rate: { num: 25, den: 1 },
      frames: truth.frames,
      startCount: 900_000,
      isDropFrame: false,
      media,
    },
  ],
  cues: truth.shots.map(({ change }, index) => ({
    id: `cue-${String(index + 1).padStart(2, '0')}`,
    reel: 'reel-1',
    first: index === 0 ? 0 : change.first,
    ramp: index === 0 || change.kind === 'cut' ? 0 : change.last - change.first + 1,
    boundary: { kind: KINDS[change.kind], confidence: index === 16 ? 0.62 : 1 },
    grade: DONE[index]?.grade ?? NO_GRADE,
    framing: DONE[index]?.framing ?? NO_FRAMING,
    note: DONE[index]?.note ?? '',
    agreement: 'open',
  })),
})
