import type { CubeStep, CurveStep, ProcessList } from '../../src/core/process/processList.ts'

/** A cube of gentle shades, a little saturation and a turn of colours, blue fastest. */
export const madeCube = (
  points: number,
  interpolation: CubeStep['interpolation'] = 'tetrahedral',
): CubeStep => {
  const values: number[] = []
  const last = points - 1
  for (let r = 0; r < points; r++)
    for (let g = 0; g < points; g++)
      for (let b = 0; b < points; b++) {
        const [x, y, z] = [r / last, g / last, b / last]
        values.push(
          1.1 * x ** 1.2 - 0.1 * y * z,
          0.02 + y - 0.05 * Math.sin(6 * x),
          z ** 0.8 - 0.2 * x * (1 - y),
        )
      }
  return { kind: 'cube', interpolation, points, values }
}

/** A curve of a soft shoulder and a toe, a little apart in each channel where it has three. */
export const madeCurve = (points: number, channels: 1 | 3 = 1): CurveStep => {
  const values: number[] = []
  for (let i = 0; i < points; i++) {
    const x = i / (points - 1)
    for (let c = 0; c < channels; c++)
      values.push(-0.02 * c + x ** (1.1 + 0.1 * c) + 0.1 * Math.sin(5 * x))
  }
  return { kind: 'curve', channels, points, values }
}

/** Lists of each kind of step, and of several, as a scanner or a lab might hand them over. */
export const MADE_LISTS: Readonly<Record<string, ProcessList>> = {
  'a matrix': {
    name: 'matrix',
    steps: [
      {
        kind: 'matrix',
        rows: [
          [1.2, -0.15, -0.05],
          [-0.1, 1.2, -0.1],
          [0.02, -0.2, 1.18],
        ],
        offset: [0.01, -0.02, 0.03],
      },
    ],
  },
  'a curve of 4,096 places': { name: 'curve', steps: [madeCurve(4096, 3)] },
  'one curve of 3 places': {
    name: 'curve',
    steps: [{ kind: 'curve', channels: 1, points: 3, values: [0.1, 0.4, 1] }],
  },
  'a cube of 33 by tetrahedra': { name: 'cube', steps: [madeCube(33)] },
  'a cube of 17 by eight places': { name: 'cube', steps: [madeCube(17, 'trilinear')] },
  'ranges that clamp and that do not': {
    name: 'ranges',
    steps: [
      { kind: 'range', low: [0.05, 0], high: [0.9, 1], clamps: false },
      { kind: 'range', low: [0.02, 0.02], high: null, clamps: true },
      { kind: 'range', low: [0, 0.05], high: [1, 0.95], clamps: true },
    ],
  },
  'corrections of all styles': {
    name: 'corrections',
    steps: (['forward-no-clamp', 'reverse-no-clamp', 'forward', 'reverse'] as const).map(
      (style, i) => ({
        kind: 'cdl',
        style,
        cdl: {
          slope: [1.2, 1, 0.9],
          offset: [-0.02, 0.01, 0.03],
          power: [1.1, 1, 0.9],
          saturation: 0.8 + 0.1 * i,
        },
      }),
    ),
  },
  'a matrix, a curve and a cube': {
    name: 'several',
    steps: [
      {
        kind: 'matrix',
        rows: [
          [0.9, 0.1, 0],
          [0, 1, 0],
          [0, 0.2, 0.8],
        ],
        offset: [0.05, 0, -0.05],
      },
      madeCurve(1024),
      madeCube(9),
      { kind: 'range', low: null, high: [1, 1], clamps: true },
    ],
  },
}
