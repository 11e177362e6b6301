import { expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { IDENTITY_MATRIX3 } from '../../../src/core/colour/matrix3.ts'
import { changedNumbers } from '../../../src/core/solve/changedNumbers.ts'
import {
  broughtInsideWords,
  changedWords,
  insideWords,
  matchedWords,
  neutralWords,
  restoredDyeWords,
  type Unsettled,
} from '../../../src/core/solve/changeWords.ts'

const GRADE = { ...IDENTITY_GRADE, lift: [-0.05, 0, 0.012], gain: [0.9, 0.9, 0.9] } as const
const CHANGED = changedNumbers(IDENTITY_GRADE, { ...GRADE, saturation: 0.95 })

const UNSETTLED: Unsettled = {
  profileName: 'EBU R 103 v3',
  area: 0.01,
  isFiltered: true,
  isRamped: false,
  isFramed: false,
}

const INSIDE = {
  grade: GRADE,
  changed: CHANGED,
  meanDeltaE: 1.26,
  shareBefore: 0.0421,
  shareAfter: 0.00984,
}

test('each number that changed is told once, from what to what, by its term', () => {
  expect(changedWords(CHANGED)).toBe(
    'Changes: lift R 0.000 → −0.050, B 0.000 → 0.012; gain all 1.000 → 0.900; saturation 1.000 → 0.950.',
  )
})

test('a change too small for the fields is said to be one', () => {
  const small = changedNumbers(IDENTITY_GRADE, { ...IDENTITY_GRADE, saturation: 1.0001 })
  expect(changedWords(small)).toBe('Less changes than the numbers show.')
})

test('bringing inside: shares before and after, mean difference, and what is still open', () => {
  expect(broughtInsideWords(INSIDE, UNSETTLED)).toEqual([
    changedWords(CHANGED),
    'Outside “EBU R 103 v3”: 4.2 % of the pixels before, 0.98 % after; 1.00 % may be.',
    'Mean change ΔE00 1.3. The verdict counts after the filter and frame by frame: measuring, once it is kept, confirms it.',
  ])
})

test('measured frames are told, and a worst one that is still too much', () => {
  const says = (part: number) =>
    broughtInsideWords(INSIDE, { ...UNSETTLED, worst: { part, frames: 7 } })
  expect(says(0.008).slice(1)).toEqual([
    'Outside “EBU R 103 v3”: 4.2 % of the pixels before, 0.98 % after; of 7 frames measured the worst has 0.80 % after the filter; 1.00 % may be.',
    'Mean change ΔE00 1.3. The verdict on every frame follows once it is kept.',
  ])
  expect(says(0.03).at(-1)).toContain('still more than may be')
})

test('where every pixel was counted and none may be outside, nothing is open', () => {
  const settled = { ...UNSETTLED, area: 0, isFiltered: false }
  expect(broughtInsideWords({ ...INSIDE, shareAfter: 0 }, settled).slice(1)).toEqual([
    'Outside “EBU R 103 v3”: 4.2 % of the pixels before, 0 % after; none may be.',
    'Mean change ΔE00 1.3. All pixels were counted: it holds for every frame.',
  ])
})

test('nothing to do is said plainly', () => {
  const none = { ...INSIDE, changed: [], shareBefore: 0.00003, shareAfter: 0.00003 }
  expect(broughtInsideWords(none, UNSETTLED)[0]).toBe(
    'Nothing is to be done: < 0.01 % of the cue’s pixels are outside “EBU R 103 v3”, and 1.00 % may be.',
  )
  expect(insideWords(0.002, { area: 0.01, name: 'EBU R 103 v3' })).toBe(
    'Nothing is to be done: as measured, 0.20 % of a frame is outside “EBU R 103 v3” at worst, and 1.00 % may be.',
  )
})

test('neutral places: exact, near, and neutral already', () => {
  const solved = { grade: GRADE, changed: ['gain'], isExact: true, residuals: [0] } as const
  expect(neutralWords(solved, CHANGED)[1]).toBe(
    'The place picked becomes neutral and keeps its brightness.',
  )
  expect(neutralWords({ ...solved, isExact: false, residuals: [0.004, 0.012] }, CHANGED)[1]).toBe(
    'The 2 places picked only come near neutral: 1.20 % of signal is left at most.',
  )
  expect(neutralWords(solved, [])).toEqual(['The place picked is neutral already.'])
})

test('a match: how far apart before and after, and that it may not fit', () => {
  const matched = { grade: GRADE, changed: CHANGED, apartBefore: 0.061, apartAfter: 0.0123 }
  const says = matchedWords(matched, 'cue 4')
  expect(says[1]).toBe('The levels were 6.1 % of signal from those of cue 4; they would be 1.23 %.')
  expect(says[2]).toContain('may not fit')
  expect(matchedWords({ ...matched, changed: [] }, 'cue 4')).toHaveLength(1)
})

test('a dye restoration: what is kept of each, residual and densities', () => {
  expect(
    restoredDyeWords({
      dyes: IDENTITY_MATRIX3,
      kept: [0.62, 0.94, 0.805],
      residual: 0.004,
      darkest: { before: 1.82, after: 2.414 },
    }).slice(0, 2),
  ).toEqual([
    'Cyan has kept 62 % of its dye, magenta 94 %, yellow 81 %.',
    'The darkest hundredth of a few frames begins at density 1.82 as scanned, at 2.41 restored. Picked places are 0.40 % of signal from neutral at most.',
  ])
})
