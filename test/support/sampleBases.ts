import type { Matrix3 } from '../../src/core/colour/matrix3.ts'
import { type FilmBase, PRINT_BASE } from '../../src/core/film/filmBase.ts'
import type { ProcessStep } from '../../src/core/process/processList.ts'

/** A dye restoration as faded print stock needs it, and one far past any. */
const DYES: Matrix3 = [
  [1.3, -0.2, -0.1],
  [-0.1, 1.25, -0.15],
  [0.05, -0.3, 1.25],
]
const STRONG_DYES: Matrix3 = [
  [8, -5, -2],
  [-5, 9, -3],
  [5, -3, -1],
]

/** One step of each kind. */
export const SAMPLE_STEPS: readonly ProcessStep[] = [
  {
    kind: 'cdl',
    style: 'reverse-no-clamp',
    cdl: {
      slope: [1.2, 1, 0.9],
      offset: [-0.02, 0.01, 0.03],
      power: [1.1, 1, 0.9],
      saturation: 0.8,
    },
  },
  {
    kind: 'matrix',
    rows: [
      [0.9, 0.1, 0],
      [0, 1, 0],
      [0, 0.2, 0.8],
    ],
    offset: [0.05, 0, -0.05],
  },
  { kind: 'range', low: [-0.1, -0.05], high: [1.1, 1.2], clamps: true },
  { kind: 'curve', channels: 3, points: 3, values: [0, 0.1, -0.1, 0.4, 0.5, 0.6, 1, 1.1, 0.9] },
  { kind: 'curve', channels: 1, points: 4, values: [0.01, 0.3, 0.7, 1.1] },
  {
    kind: 'cube',
    interpolation: 'tetrahedral',
    points: 2,
    values: [0, 0, -0.1, 0, 0, 0.5, 0, 1, 0, 0, 1, 1, 1, 0, 0, 1, 0, 1, 1, 1, 0, 1.2, 1, 1],
  },
  {
    kind: 'cube',
    interpolation: 'trilinear',
    points: 2,
    values: [
      0, 0, 0, 0.1, 0, 0.9, 0, 0.8, 0.1, 0, 1, 1, 0.9, 0, 0.1, 1, 0.1, 1, 1, 1, 0, 1, 1, 0.9,
    ],
  },
]

const NEGATIVE = { scan: 'negative', clear: [0.2, 0.5, 0.7], gamma: [0.6, 0.55, 0.65] } as const

/** Bases of every kind: scans, dyes, and lists of their own. */
export const SAMPLE_BASES: readonly { readonly name: string; readonly base: FilmBase }[] = [
  { name: 'a print', base: PRINT_BASE },
  { name: 'a print, its dyes restored', base: { ...PRINT_BASE, dyes: DYES } },
  { name: 'a print, its dyes far apart', base: { ...PRINT_BASE, dyes: STRONG_DYES } },
  { name: 'printing density', base: { ...PRINT_BASE, scan: 'printing-density' } },
  { name: 'printing density, dyes', base: { ...PRINT_BASE, scan: 'printing-density', dyes: DYES } },
  { name: 'a negative', base: { ...PRINT_BASE, ...NEGATIVE } },
  { name: 'a negative, dyes', base: { ...PRINT_BASE, ...NEGATIVE, dyes: DYES } },
  {
    name: 'a print with a list of its own',
    base: { ...PRINT_BASE, list: { name: 'own', steps: SAMPLE_STEPS } },
  },
  {
    name: 'a negative with a list of its own',
    base: { ...PRINT_BASE, ...NEGATIVE, dyes: DYES, list: { name: 'own', steps: SAMPLE_STEPS } },
  },
]
