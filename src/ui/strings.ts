/** The words of the screen, in one place. Words for problems come with the problems themselves. */
export const STRINGS = {
  program: 'Reelwright',
  purpose: 'Scene grading decision lists for film transfer',
  start: {
    openReel: 'Open a reel…',
    openJob: 'Open a job…',
    openSample: 'Open the sample reel',
    drop: 'or drop a file here: a video, a numbered PNG or TIFF sequence, or a job',
    kept: 'Kept in this browser',
    nothingLeaves: 'Everything stays on this computer. Nothing is uploaded.',
    opening: 'Opening the reel…',
  },
  slow: {
    short: 'slow: no WebAssembly SIMD here',
    whole:
      'This browser cannot run the kernel (WebAssembly SIMD). Levels are exact, but measuring is slow.',
  },
  steps: { prepare: 'Prepare', rehearse: 'Rehearse', 'hand-over': 'Hand over' },
  ledger: {
    name: 'Ledger',
    strip: 'strip: scanned | graded',
    cue: 'cue in',
    length: 'length',
    transfer: 'transfer',
    saturation: 'sat',
    tolerance: 'tolerance',
    agreement: 'agreed · note',
  },
  agreement: { open: '○ open', agreed: '✓ agreed', asked: '✎ changes asked' },
  boundary: {
    start: 'start of reel',
    cut: 'cut',
    dissolve: 'dissolve',
    'fade-out': 'fade',
    'fade-in': 'fade in',
    dip: 'dip',
    'by-hand': 'by hand',
  },
  matrices: { bt601: 'BT.601', bt709: 'BT.709', bt2020: 'BT.2020' },
  ranges: { narrow: 'narrow (16–235)', full: 'full (0–255)' },
} as const
