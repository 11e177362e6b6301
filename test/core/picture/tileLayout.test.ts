import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { placeInTile, tileLayout } from '../../../src/core/picture/tileLayout.ts'

describe('tiles', () => {
  it('stand side by side in a wide room, one over the other in a high one', () => {
    const wide = tileLayout(2, 16 / 9, { width: 800, height: 300 }, 8)
    expect(wide.areas.map(({ top }) => top)).toEqual([0, 0])
    expect(wide.width).toBe(800)
    const high = tileLayout(2, 16 / 9, { width: 400, height: 600 }, 8)
    expect(high.areas.map(({ left }) => left)).toEqual([0, 0])
  })

  it('fit the room, keep their shape and never overlap', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 13 }),
        fc.double({ min: 0.8, max: 2.4, noNaN: true }),
        fc.integer({ min: 200, max: 2000 }),
        fc.integer({ min: 200, max: 1200 }),
        (count, aspect, roomWidth, roomHeight) => {
          const room = { width: roomWidth, height: roomHeight }
          const { width, height, areas } = tileLayout(count, aspect, room, 8)
          expect(width).toBeLessThanOrEqual(roomWidth)
          expect(height).toBeLessThanOrEqual(roomHeight)
          expect(areas).toHaveLength(count)
          const boxes = areas.map((area) => ({
            left: area.left * width,
            top: area.top * height,
            right: (area.left + area.width) * width,
            bottom: (area.top + area.height) * height,
          }))
          for (const [i, a] of boxes.entries()) {
            expect(a.right - a.left).toBeGreaterThan((a.bottom - a.top - 1) * aspect - 2)
            expect(a.right - a.left).toBeLessThan((a.bottom - a.top + 1) * aspect + 2)
            for (const b of boxes.slice(i + 1)) {
              const isApart =
                a.right + 7 <= b.left ||
                b.right + 7 <= a.left ||
                a.bottom + 7 <= b.top ||
                b.bottom + 7 <= a.top
              expect(isApart).toBe(true)
            }
          }
        },
      ),
      { seed: 91 },
    )
  })

  it('say where a place lies in the one it is in, and nothing between them', () => {
    const { areas, width } = tileLayout(2, 1, { width: 208, height: 100 }, 8)
    expect(placeInTile(areas, { x: 50 / width, y: 0.25 })).toEqual({ x: 0.5, y: 0.25 })
    const second = placeInTile(areas, { x: 133 / width, y: 1 })
    expect(second?.x).toBeCloseTo(0.25, 12)
    expect(placeInTile(areas, { x: 104 / width, y: 0.5 })).toBeUndefined()
  })
})
