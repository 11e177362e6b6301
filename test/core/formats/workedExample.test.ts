import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { gradeColour } from '../../../src/core/colour/grade.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import { baseColour, PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { framingMap } from '../../../src/core/picture/framing.ts'
import type { ProcessList } from '../../../src/core/process/processList.ts'

const PAGE = readFileSync(resolve(import.meta.dirname, '../../../docs/job-format.md'), 'utf8')

/** What the worked example below a heading comes to. */
const printedBelow = (heading: string): number[] => {
  const text = PAGE.slice(PAGE.indexOf(`\n## ${heading}\n`))
  return /\*\*\(([\d., ]+)\)\*\*/u.exec(text)?.[1]?.split(', ').map(Number) ?? []
}

const isPrinted = (out: Triple, heading: string): void => {
  const printed = printedBelow(heading)
  expect(printed).toHaveLength(3)
  for (const [i, value] of printed.entries()) expect(out[i]).toBeCloseTo(value, 6)
}

it('the worked example of a grade in docs/job-format.md is what the program does', () => {
  const grade = {
    lift: [0.02, 0, -0.01],
    gamma: [1.2, 1, 0.9],
    gain: [1.1, 1, 0.95],
    saturation: 1.1,
  } as const
  isPrinted(gradeColour([0.5, 0.4, 0.3], grade), 'From a code to a graded code')
})

it('the worked example of a base in docs/job-format.md is what the program does', () => {
  const base = {
    scan: 'negative',
    clear: [0.25, 0.6, 0.85],
    gamma: [0.55, 0.6, 0.65],
    dyes: [
      [1.1, -0.1, 0],
      [0, 1, 0],
      [0, 0.05, 0.95],
    ],
    list: null,
  } as const
  isPrinted(baseColour([0.5, 0.35, 0.3], base), 'The base')
})

it('the worked example of a base list in docs/job-format.md is what the program does', () => {
  const list: ProcessList = {
    name: 'example',
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
      { kind: 'curve', channels: 1, points: 3, values: [0, 0.4, 1] },
      {
        kind: 'cube',
        interpolation: 'tetrahedral',
        points: 2,
        values: [0, 0, 0, 0, 0, 1, 0, 1, 0, 0, 1, 1, 1, 0, 0, 1, 0, 1, 1, 1, 0, 1, 0.9, 0.8],
      },
    ],
  }
  isPrinted(baseColour([0.5, 0.4, 0.3], { ...PRINT_BASE, list }), 'The base list')
})

it('the worked example of a framing in docs/job-format.md is what the program does', () => {
  const framing = {
    zoom: 1.25,
    pan: 0.05,
    tilt: -0.02,
    rotation: 2,
    squeeze: 1,
    blanking: 0.25,
  }
  const { xx, xy, yx, yy, offsetX, offsetY, open } = framingMap(framing, 1920, 1080)
  const place = [xx * 100 + xy * 200 + offsetX, yx * 100 + yy * 200 + offsetY]
  const printed = printedBelow('Framing')
  expect(printed).toHaveLength(2)
  for (const [i, value] of printed.entries()) expect(place[i]).toBeCloseTo(value, 6)
  expect([open.top, open.bottom]).toEqual([135, 945])
})
