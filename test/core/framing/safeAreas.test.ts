import { describe, expect, it } from 'vitest'
import { safeAreas } from '../../../src/core/framing/safeAreas.ts'

const pixels = (aspect: number, name: string, width: number, height: number) => {
  const area = safeAreas(aspect).find((one) => one.name === name)
  return [(area?.width ?? 0) * width, (area?.height ?? 0) * height]
}

describe('safeAreas', () => {
  // facts/levels.md §5: EBU R 95, pixels computed before rounding.
  it.each([
    [1920, 1080, 1785.6, 1004.4, 1728, 972],
    [1280, 720, 1190.4, 669.6, 1152, 648],
    [3840, 2160, 3571.2, 2008.8, 3456, 1944],
  ])('of %s×%s are those of EBU R 95', (width, height, actionW, actionH, graphicsW, graphicsH) => {
    const [aw, ah] = pixels(16 / 9, 'action safe', width, height)
    expect(aw).toBeCloseTo(actionW, 6)
    expect(ah).toBeCloseTo(actionH, 6)
    const [gw, gh] = pixels(16 / 9, 'graphics safe', width, height)
    expect(gw).toBeCloseTo(graphicsW, 6)
    expect(gh).toBeCloseTo(graphicsH, 6)
  })

  it('protects the middle 14 : 9 and 4 : 3 of a 16 : 9 picture', () => {
    expect(pixels(16 / 9, '14 : 9', 1920, 1080)).toEqual([expect.closeTo(1680), 1080])
    expect(pixels(16 / 9, '4 : 3', 1920, 1080)).toEqual([expect.closeTo(1440), 1080])
  })

  it('of 4 : 3 are the older 90 % and 80 %, with 14 : 9 across it', () => {
    expect(pixels(4 / 3, 'action safe', 720, 576)).toEqual([648, expect.closeTo(518.4)])
    expect(pixels(4 / 3, 'title safe', 720, 576)).toEqual([576, expect.closeTo(460.8)])
    expect(pixels(4 / 3, '14 : 9', 720, 576)).toEqual([720, expect.closeTo(493.71, 2)])
  })

  it('says where each comes from, and has a line of its own for each', () => {
    for (const aspect of [4 / 3, 16 / 9, 2]) {
      const areas = safeAreas(aspect)
      expect(new Set(areas.map(({ line }) => line)).size).toBe(areas.length)
      for (const { source, says } of areas) {
        expect(source).not.toBe('')
        expect(says).toMatch(/EBU R 95|BKSTS|common practice/u)
      }
    }
    expect(safeAreas(2).every(({ source }) => source === 'common practice')).toBe(true)
  })
})
