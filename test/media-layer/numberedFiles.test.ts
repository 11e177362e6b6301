import { expect, test } from 'vitest'
import { numberedName, orderNumbered } from '../../src/media/numberedFiles.ts'

const order = (...names: readonly string[]) => {
  const ordered = orderNumbered(names.map((name) => ({ name })))
  return ordered.ok ? ordered.value.map(({ name }) => name) : ordered.problems[0].says
}

test('the last number in a name counts, whatever stands before or after it', () => {
  expect(numberedName('reel2_take10_0007.tif')).toMatchObject({
    before: 'reel2_take10_',
    number: 7,
    after: '.tif',
  })
  expect(numberedName('scan.000123').number).toBe(123)
  expect(numberedName('scan.0042.left.png')).toMatchObject({ number: 42, after: '.left.png' })
  expect(numberedName('title.png').number).toBeUndefined()
})

test('numbers are compared as numbers, not as text', () => {
  expect(order('f10.png', 'f9.png', 'f11.png', 'f8.png')).toEqual([
    'f8.png',
    'f9.png',
    'f10.png',
    'f11.png',
  ])
})

test('missing numbers are named, the first few of them', () => {
  expect(order('f1.png', 'f2.png', 'f5.png')).toMatch(/no picture 3, 4;/u)
  expect(order('f1.png', 'f900.png')).toMatch(/no picture 2, 3, 4, 5, 6 and more/u)
})

test('doubled numbers, two sequences at once, and names without a number are refused', () => {
  expect(order('f1.png', 'f01.png')).toMatch(/Number 1 is there twice/u)
  expect(order('a1.png', 'b2.png')).toMatch(/a1\.png and b2\.png belong to different sequences/u)
  expect(order('f1.png', 'f2.tif')).toMatch(/different sequences/u)
  expect(order('f1.png', 'title.png')).toMatch(/title\.png has no number/u)
  expect(order('f1.png', 'f99999999999999999999.png')).toMatch(/has no number/u)
})

test('one file needs no number', () => {
  expect(order('title.png')).toEqual(['title.png'])
})
