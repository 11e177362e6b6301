import { expect, it } from 'vitest'
import { shrinkPlanes, shrunkSize } from '../../../src/core/picture/shrinkPlanes.ts'

it('takes the mean of the pixels each small pixel covers, plane by plane', () => {
  const luma = Uint8Array.from({ length: 8 * 4 }, (_, i) => i)
  const cb = new Uint8Array(4 * 2).fill(90)
  const cr = Uint8Array.from([1, 3, 5, 7, 1, 3, 5, 7])
  const small = shrinkPlanes(
    { width: 8, height: 4, bytes: Uint8Array.from([...luma, ...cb, ...cr]) },
    2,
  )
  expect(small).toMatchObject({ width: 4, height: 2 })
  // Rows 0 and 1, columns 0 and 1: (0 + 1 + 8 + 9) / 4 = 4.5.
  expect([...small.bytes.subarray(0, 8)]).toEqual([5, 7, 9, 11, 21, 23, 25, 27])
  expect([...small.bytes.subarray(8)]).toEqual([90, 90, 2, 6])
})

it('comes to whole pairs of pixels, at least one', () => {
  expect(shrunkSize(1921, 1081, 3)).toEqual({ width: 640, height: 360 })
  expect(shrunkSize(16, 3, 4)).toEqual({ width: 4, height: 2 })
})

it('leaves a picture of odd sides within its edge', () => {
  const bytes = new Uint8Array(5 * 3 + 2 * 3 * 2).fill(40)
  const small = shrinkPlanes({ width: 5, height: 3, bytes }, 1)
  expect(small).toMatchObject({ width: 4, height: 2 })
  expect(new Set(small.bytes)).toEqual(new Set([40]))
})
