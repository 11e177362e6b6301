import { expect, test } from 'vitest'
import { storageProblem } from '../../../src/work/pass/storageProblem.ts'

test.each([
  'QuotaExceededError',
  'NotAllowedError',
  'NoModificationAllowedError',
  'NotFoundError',
  'NotReadableError',
  'InvalidStateError',
])('%s names what was written, and says to go on', (name) => {
  const told = storageProblem(new DOMException('low-level words', name), 'harbour.mp4')
  expect(told?.says).toContain('harbour.mp4')
  expect(told?.says).toMatch(/go on with the pass/u)
  expect(told?.says).not.toContain('low-level')
})

test('an error of the program itself is none of these', () => {
  expect(storageProblem(new TypeError('x is not a function'), 'harbour.mp4')).toBeUndefined()
})
