import { describe, expect, it } from 'vitest'
import { FILM_APERTURES } from '../../../src/core/framing/filmAperture.ts'
import { frameBox, openOutline } from '../../../src/core/framing/frameBox.ts'
import { aperturePresets, frameToAperture } from '../../../src/core/framing/frameToAperture.ts'
import { openRatio } from '../../../src/core/framing/openRatio.ts'
import { FRAMING_LIMITS } from '../../../src/core/job/commands/setFraming.ts'
import { type Framing, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { FRAMES_PER_FOOT, type Gauge } from '../../../src/core/time/footage.ts'

const preset = (scanned: string, wanted: string) => {
  const found = aperturePresets('35mm-4perf').find(
    (one) => one.scanned.id === scanned && one.wanted.id === wanted,
  )
  if (!found) throw new Error(`no preset from ${scanned} to ${wanted}`)
  return found
}

describe('frameToAperture', () => {
  it('frames a full-aperture scan in 4 : 3 to the 1.85 projector aperture', () => {
    const framing = frameToAperture(IDENTITY_FRAMING, 4 / 3, preset('35-full', '35-185'))
    // Widths 24.89 and 20.96 mm; the area is wider than the picture, so its width fills it.
    expect(framing.zoom).toBeCloseTo(24.89 / 20.96, 3)
    expect(framing.squeeze).toBe(1)
    expect(openRatio(framing.blanking, 4 / 3)).toBeCloseTo(1.85, 3)
    expect(frameBox(framing, 4 / 3).middle[0] * 18.67).toBeCloseTo(24.89 / 2 + 1.26, 2)
  })

  it('shows a squeezed print whole and unsqueezed, letterboxed', () => {
    const framing = frameToAperture(IDENTITY_FRAMING, 16 / 9, preset('35-full', '35-239'))
    expect(framing.squeeze).toBe(2)
    expect(openRatio(framing.blanking, 16 / 9)).toBeCloseTo(2.391, 2)
    expect(frameBox(framing, 16 / 9).width * 18.67).toBeCloseTo(20.96, 2)
  })

  it('leaves exactly the wanted area open, for every preset and shape', () => {
    for (const gauge of Object.keys(FRAMES_PER_FOOT) as Gauge[])
      for (const one of aperturePresets(gauge))
        for (const aspect of [4 / 3, 16 / 9, 1.85]) {
          const framing = frameToAperture(IDENTITY_FRAMING, aspect, one)
          const { scanned, wanted } = one
          const scale = Math.min(aspect / scanned.width, 1 / scanned.height)
          const xs = openOutline(framing, aspect).map(([x]) => x)
          const ys = openOutline(framing, aspect).map(([, y]) => y)
          // Shapes within half a percent are taken as one.
          const size = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)]
          expect((size[0] ?? 0) / scale / wanted.width).toBeCloseTo(1, 1.9)
          expect((size[1] ?? 0) / scale / wanted.height).toBeCloseTo(1, 1.9)
          for (const field of Object.keys(FRAMING_LIMITS) as (keyof Framing)[]) {
            expect(framing[field]).toBeGreaterThanOrEqual(FRAMING_LIMITS[field][0])
            expect(framing[field]).toBeLessThanOrEqual(FRAMING_LIMITS[field][1])
          }
        }
  })

  it('keeps the rotation, about the middle of the area', () => {
    const one = preset('35-full', '35-sound')
    const turned = frameToAperture({ ...IDENTITY_FRAMING, rotation: 10 }, 4 / 3, one)
    const upright = frameToAperture(IDENTITY_FRAMING, 4 / 3, one)
    expect(turned.rotation).toBe(10)
    const [a, b] = [frameBox(turned, 4 / 3).middle, frameBox(upright, 4 / 3).middle]
    expect(a[0]).toBeCloseTo(b[0], 4)
    expect(a[1]).toBeCloseTo(b[1], 4)
  })
})

describe('aperturePresets', () => {
  it('offers only areas that lie inside what was scanned', () => {
    for (const gauge of Object.keys(FRAMES_PER_FOOT) as Gauge[])
      for (const { scanned, wanted } of aperturePresets(gauge)) {
        expect(scanned.isCamera).toBe(true)
        expect(wanted.width).toBeLessThanOrEqual(scanned.width)
        expect(wanted.height).toBeLessThanOrEqual(scanned.height)
        expect(Math.abs(wanted.offset - scanned.offset) * 2 + wanted.width).toBeLessThanOrEqual(
          scanned.width,
        )
      }
  })

  it('asserts nothing of Super 8, whose sizes are not sure', () => {
    expect(aperturePresets('super8')).toEqual([])
  })
})

describe('FILM_APERTURES', () => {
  // Ratios as facts/film.md §6 prints them beside the sizes (2.39 before its squeeze).
  it.each([
    ['35-full', 1.333],
    ['35-sound', 1.375],
    ['35-137', 1.37],
    ['35-166', 1.66],
    ['35-185', 1.85],
    ['35-239', 1.196],
    ['35-station', 1.333],
    ['35-transmitted', 1.333],
    ['16-camera', 1.37],
    ['16-projector', 1.33],
    ['16-transmitted', 1.336],
    ['8-camera', 1.37],
    ['8-projector', 1.3],
  ])('%s has the ratio %s', (id, ratio) => {
    const found = FILM_APERTURES.find((one) => one.id === id)
    expect((found?.width ?? 0) / (found?.height ?? 1)).toBeCloseTo(ratio, 2)
  })
})
