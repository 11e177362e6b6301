import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointOnDelivered, pointOnScan } from '../../../src/core/framing/pointOnScan.ts'
import { framingMap, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'

const part = fc.double({ min: 0, max: 1, noNaN: true })
const framing = fc.record({
  zoom: fc.double({ min: 0.25, max: 8, noNaN: true }),
  pan: fc.double({ min: -1, max: 1, noNaN: true }),
  tilt: fc.double({ min: -1, max: 1, noNaN: true }),
  rotation: fc.double({ min: -180, max: 180, noNaN: true }),
  squeeze: fc.double({ min: 0.25, max: 4, noNaN: true }),
  blanking: fc.constant(0),
})

describe('a place on the scan', () => {
  it('is the same place where nothing is framed', () => {
    const place = pointOnScan(IDENTITY_FRAMING, 16 / 9, { x: 0.2, y: 0.7 })
    expect(place?.x).toBeCloseTo(0.2, 12)
    expect(place?.y).toBeCloseTo(0.7, 12)
  })

  it('is none where the view leaves the scan', () => {
    const far = { ...IDENTITY_FRAMING, zoom: 0.5 }
    expect(pointOnScan(far, 4 / 3, { x: 0.2, y: 0.5 })).toBeUndefined()
    expect(pointOnScan(far, 4 / 3, { x: 0.3, y: 0.5 })?.x).toBeCloseTo(0.1, 12)
  })

  it('is where the pixels of the delivered picture are read, whatever their shape', () => {
    fc.assert(
      fc.property(framing, part, part, fc.constantFrom(1, 1.0667, 1.4222), (f, x, y, pixel) => {
        const [width, height] = [720, 576]
        const aspect = (width / height) * pixel
        const map = framingMap(f, width, height, pixel)
        const [column, row] = [x * width - 0.5, y * height - 0.5]
        const across = (map.xx * column + map.xy * row + map.offsetX + 0.5) / width
        const down = (map.yx * column + map.yy * row + map.offsetY + 0.5) / height
        const place = pointOnScan(f, aspect, { x, y })
        if (!place)
          expect(across < 1e-9 || across > 1 - 1e-9 || down < 1e-9 || down > 1 - 1e-9).toBe(true)
        else {
          expect(place.x).toBeCloseTo(across, 9)
          expect(place.y).toBeCloseTo(down, 9)
        }
      }),
      { seed: 81 },
    )
  })

  it('goes back to where it came from', () => {
    fc.assert(
      fc.property(framing, part, part, (f, x, y) => {
        const place = pointOnScan(f, 1.5, { x, y })
        if (!place) return
        const back = pointOnDelivered(f, 1.5, place)
        expect(back.x).toBeCloseTo(x, 8)
        expect(back.y).toBeCloseTo(y, 8)
      }),
      { seed: 82 },
    )
  })
})
