import fc from 'fast-check'
import { expect, test } from 'vitest'
import { createNearBook } from '../../src/app/nearBook.ts'
import { frame } from '../../src/core/time/frame.ts'

const ROOM = 8
const frames = fc.array(fc.integer({ min: 0, max: 60 }), { maxLength: 60 })

test('the nearest is as near as any that is kept', () => {
  fc.assert(
    fc.property(frames, fc.integer({ min: 0, max: 60 }), (put, wanted) => {
      const book = createNearBook<string>(ROOM)
      for (const at of put) book.put(frame(at), `of ${at}`)
      const kept = [...Array(61).keys()].filter((at) => book.get(frame(at)) !== undefined)
      expect(kept.length).toBeLessThanOrEqual(ROOM)
      const found = book.nearest(frame(wanted), () => true)
      if (kept.length === 0) {
        expect(found).toBeUndefined()
        return
      }
      const least = Math.min(...kept.map((at) => Math.abs(at - wanted)))
      expect(Math.abs((found?.frame ?? Infinity) - wanted)).toBe(least)
      expect(found?.value).toBe(`of ${found?.frame}`)
    }),
  )
})

test('what was used lately stays, and what does not fit is not nearest', () => {
  const book = createNearBook<number>(3)
  for (const at of [10, 20, 30]) book.put(frame(at), at)
  book.get(frame(10))
  book.put(frame(40), 40)
  expect([10, 20, 30, 40].map((at) => book.get(frame(at)))).toEqual([10, undefined, 30, 40])
  expect(book.nearest(frame(12), (at) => at > 12)?.frame).toBe(30)
  expect(book.nearest(frame(12), (at) => at > 30)).toBeUndefined()
})
