import { expect, test } from 'vitest'
import { areTimesEven } from '../../src/media/evenTimes.ts'

const times = (count: number, at: (n: number) => number) =>
  Array.from({ length: count }, (_, n) => at(n))

test('stamps rounded to milliseconds are even at every common rate', () => {
  for (const fps of [16, 18, 24000 / 1001, 24, 25, 30000 / 1001, 30, 50, 60000 / 1001, 120])
    expect(areTimesEven(times(100, (n) => Math.round((1000 * n) / fps) / 1000))).toBe(true)
})

test('a picture held for twice its time here and there leaves a rate', () => {
  expect(areTimesEven(times(100, (n) => (n + (n > 40 ? 1 : 0)) / 25))).toBe(true)
})

test('pictures now closer and now further apart have no rate', () => {
  expect(areTimesEven(times(60, (n) => n / 25 + (n % 2) * 0.02))).toBe(false)
  expect(areTimesEven(times(60, (n) => (n * n) / 1000))).toBe(false)
})

test('one picture, none, or pictures at one time have no rate', () => {
  expect(areTimesEven([])).toBe(false)
  expect(areTimesEven([0])).toBe(false)
  expect(areTimesEven([1, 1, 1, 1])).toBe(false)
})
