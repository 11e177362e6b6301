/**
 * The shots of the sample reel, in order. `view` is what the camera sees of the photograph:
 * centre x and y and width, as fractions of its width and height; [from, to] over the shot.
 * `tint` colours shadows and lights. `fault` is what is wrong with the print, as a grade.
 * `outside` says how much of the shot is outside EBU R 103 as scanned; without it, no frame is.
 */

const SEPIA = { shadow: [0.06, 0.045, 0.03], light: [1, 0.955, 0.87] }
const BLUE = { shadow: [0.03, 0.05, 0.09], light: [0.93, 0.97, 1] }
const NEUTRAL = { shadow: [0.04, 0.04, 0.042], light: [0.98, 0.98, 0.97] }
const GREEN = { shadow: [0.03, 0.055, 0.03], light: [0.94, 1, 0.9] }

const NO_FAULT = { lift: [0, 0, 0], gamma: [1, 1, 1], gain: [1, 1, 1], saturation: 1 }

const fault = (change) => ({ ...NO_FAULT, ...change })

/** A faded print: magenta, its blacks lifted, its colour thin. */
const FADED_MAGENTA = fault({
  lift: [0.1, 0.04, 0.08],
  gamma: [1.06, 0.9, 1],
  gain: [0.96, 0.82, 0.9],
  saturation: 0.8,
})

export const SHOTS = [
  {
    photo: 'nagasaki-boats',
    length: 110,
    change: 'fade-in',
    view: [
      [0.52, 0.55, 0.86],
      [0.52, 0.55, 0.74],
    ],
    tint: SEPIA,
    fault: fault({ gamma: [1.04, 1, 0.96] }),
    about: 'The harbour, slowly nearer',
  },
  {
    photo: 'nagasaki-boats',
    length: 70,
    change: 'cut',
    view: [
      [0.3, 0.84, 0.42],
      [0.42, 0.84, 0.42],
    ],
    tint: SEPIA,
    fault: fault({ lift: [-0.02, -0.01, 0], gamma: [0.72, 0.7, 0.68], gain: [0.86, 0.86, 0.84] }),
    about: 'The ferryman, too dark',
  },
  {
    photo: 'nagasaki-boats',
    length: 64,
    change: 'cut',
    view: [
      [0.58, 0.42, 0.4],
      [0.58, 0.36, 0.4],
    ],
    tint: SEPIA,
    fault: fault({ gain: [1.16, 1.14, 1.12], gamma: [1.2, 1.2, 1.2] }),
    outside: 'every frame',
    about: 'Mast and houses; the sky far over peak white',
  },
  {
    photo: 'french-alpine-landscape',
    length: 96,
    change: 'cut',
    view: [
      [0.28, 0.5, 0.5],
      [0.62, 0.5, 0.5],
    ],
    tint: BLUE,
    fault: fault({ lift: [0.02, 0.05, 0.1], gain: [0.9, 0.97, 1.02] }),
    about: 'A pan over the range, cold',
  },
  {
    photo: 'french-alpine-landscape',
    length: 80,
    change: 'dissolve',
    over: 20,
    view: [
      [0.55, 0.3, 0.34],
      [0.52, 0.28, 0.28],
    ],
    tint: BLUE,
    fault: fault({ gamma: [1.1, 1.08, 1.04], gain: [1.03, 1.03, 1.02] }),
    about: 'The summits, out of the pan',
  },
  {
    photo: 'dust-bowl-home',
    length: 84,
    change: 'cut',
    view: [
      [0.5, 0.52, 0.9],
      [0.56, 0.5, 0.8],
    ],
    tint: NEUTRAL,
    fault: FADED_MAGENTA,
    about: 'The empty house; the print has faded to magenta',
  },
  {
    photo: 'dust-bowl-home',
    length: 58,
    change: 'cut',
    view: [
      [0.74, 0.45, 0.42],
      [0.7, 0.45, 0.42],
    ],
    tint: NEUTRAL,
    fault: fault({ ...FADED_MAGENTA, gain: [1.0, 0.88, 0.96], lift: [0.12, 0.07, 0.1] }),
    about: 'The house nearer, faded differently',
  },
  {
    photo: 'dust-bowl-home',
    length: 52,
    change: 'cut',
    view: [
      [0.26, 0.24, 0.44],
      [0.32, 0.24, 0.44],
    ],
    tint: BLUE,
    fault: fault({ gain: [1.1, 1.12, 1.17], gamma: [1.3, 1.3, 1.3] }),
    outside: 'every frame',
    about: 'Clouds; they burn out in blue',
  },
  {
    photo: 'airplane-from-above',
    length: 90,
    change: 'cut',
    view: [
      [0.5, 0.46, 0.86],
      [0.48, 0.5, 0.7],
    ],
    tint: NEUTRAL,
    fault: fault({ lift: [0.09, 0.085, 0.08], gain: [0.82, 0.82, 0.81] }),
    flash: 41,
    about: 'The survey flight, milky; two frames of a flash in it',
  },
  {
    photo: 'airplane-from-above',
    length: 60,
    change: 'cut',
    view: [
      [0.28, 0.36, 0.36],
      [0.42, 0.36, 0.36],
    ],
    tint: NEUTRAL,
    fault: fault({ lift: [0.04, 0.07, 0.05], gamma: [0.9, 1.02, 0.9], gain: [0.9, 0.97, 0.88] }),
    about: 'Along the wing, greenish',
  },
  {
    photo: 'acanthus-mollis',
    length: 76,
    change: 'fade',
    over: 16,
    view: [
      [0.5, 0.74, 0.7],
      [0.5, 0.3, 0.7],
    ],
    tint: GREEN,
    fault: fault({ gain: [0.92, 0.96, 0.86], gamma: [0.94, 1, 0.9] }),
    about: 'Bear’s breeches, tilting up, after a fade through black',
  },
  {
    photo: 'allium-oreophilum',
    length: 66,
    change: 'cut',
    view: [
      [0.5, 0.36, 0.9],
      [0.5, 0.3, 0.64],
    ],
    tint: GREEN,
    fault: fault({ lift: [0.02, 0, 0.03], gain: [1.05, 0.95, 1.04] }),
    about: 'Wild onion, pinkish',
  },
  {
    photo: 'coffee',
    length: 84,
    change: 'cut',
    view: [
      [0.5, 0.5, 0.84],
      [0.52, 0.48, 0.66],
    ],
    tint: undefined,
    fault: fault({ gain: [1.04, 0.94, 0.74], gamma: [1.06, 1, 0.86] }),
    outside: 'a few frames',
    about: 'The cup in the ferry house by lamplight, far too warm',
  },
  {
    photo: 'coffee',
    length: 60,
    change: 'cut',
    view: [
      [0.42, 0.46, 0.46],
      [0.46, 0.46, 0.46],
    ],
    tint: undefined,
    fault: fault({ gain: [0.84, 0.92, 1.06], lift: [0, 0.01, 0.05], saturation: 0.75 }),
    about: 'The cup nearer, now too cold: a pair that does not match',
  },
  {
    photo: 'nagasaki-boats',
    length: 98,
    change: 'cut',
    view: [
      [0.2, 0.62, 0.34],
      [0.82, 0.62, 0.34],
    ],
    whip: [46, 58],
    tint: SEPIA,
    fault: fault({ lift: [-0.085, -0.08, -0.075], gamma: [0.92, 0.92, 0.92] }),
    about: 'The quay with a sudden swing to the right; blacks printed too deep',
  },
  {
    photo: 'french-alpine-landscape',
    length: 70,
    change: 'cut',
    view: [
      [0.2, 0.7, 0.36],
      [0.24, 0.66, 0.36],
    ],
    tint: BLUE,
    fault: fault({ gamma: [0.66, 0.7, 0.8], gain: [0.62, 0.68, 0.8] }),
    about: 'Firs at dusk, printed too deep',
  },
  {
    photo: 'dust-bowl-home',
    length: 72,
    change: 'cut',
    view: [
      [0.66, 0.52, 0.58],
      [0.62, 0.5, 0.66],
    ],
    tint: SEPIA,
    fault: fault({ lift: [0.03, 0.03, 0.03], gain: [1.04, 1.02, 0.94] }),
    outside: 'a few frames',
    about: 'The house again, seen from farther away',
  },
  {
    photo: 'nagasaki-boats',
    length: 130,
    change: 'dissolve',
    over: 24,
    view: [
      [0.5, 0.5, 0.7],
      [0.5, 0.5, 0.9],
    ],
    tint: SEPIA,
    fault: fault({ gamma: [1.02, 1, 0.97], gain: [0.97, 0.95, 0.9] }),
    change2: 'fade-out',
    about: 'The harbour once more, and out',
  },
]
