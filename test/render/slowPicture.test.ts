import { expect, test } from 'vitest'
import { isSlowPicture, SLOW_PART } from '../../src/render/slowPicture.ts'

test('a picture that takes long is slow, and a small one is judged by what a full one would take', () => {
  expect(isSlowPicture(25, 1, false)).toBe(true)
  expect(isSlowPicture(8, 1, false)).toBe(false)
  expect(isSlowPicture(8, SLOW_PART, true)).toBe(true)
  expect(isSlowPicture(2, SLOW_PART, true)).toBe(false)
})

test('between the two it stays as it was, so that the size does not go to and fro', () => {
  expect(isSlowPicture(16, 1, false)).toBe(false)
  expect(isSlowPicture(4, SLOW_PART, true)).toBe(true)
})
