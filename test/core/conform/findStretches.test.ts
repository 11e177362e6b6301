import { describe, expect, it } from 'vitest'
import { findStretches } from '../../../src/core/conform/findStretches.ts'
import { commonArea } from '../../../src/core/conform/printArea.ts'
import { PRINT_CELLS, PRINT_WIDTH } from '../../../src/core/conform/reelPrints.ts'
import { cellMover, NO_SCAN_MOVE } from '../../../src/core/conform/scanMove.ts'
import type { FrameSignature } from '../../../src/core/shots/frameSignature.ts'
import { printsOf, span } from '../../support/recutReel.ts'
import { seeded } from '../../support/seeded.ts'

const LENGTH = 60

/** Pictures of drifting waves, another set of waves every 60 frames. */
const waves = (seed: number, noise = 0): ((n: number) => FrameSignature) => {
  const random = seeded(seed)
  const shots = Array.from({ length: 20 }, () =>
    Array.from({ length: 6 }, () => ({
      across: 0.4 * random(),
      down: 0.6 * random(),
      phase: 6 * random(),
      drift: 0.1 * (random() - 0.5),
      height: 0.05 + 0.1 * random(),
    })),
  )
  const grain = seeded(seed + 1)
  return (n) => {
    const luma = new Float32Array(64 * 36)
    for (let i = 0; i < luma.length; i++) {
      let level = 0.5 + noise * (grain() - 0.5)
      for (const { across, down, phase, drift, height } of shots[Math.floor(n / LENGTH)] ?? [])
        level +=
          height * Math.sin(across * (i % 64) + down * Math.floor(i / 64) + phase + drift * n)
      luma[i] = level
    }
    return { luma, cb: new Float32Array(144), cr: new Float32Array(144) }
  }
}

describe('stretches found on another scan', () => {
  it('are exact on made pictures out of order, under noise', () => {
    const order = [
      ...span(600, 900),
      ...span(75, 110),
      ...span(300, 420),
      ...span(0, 60),
      ...span(425, 480),
    ]
    const [clean, noisy] = [waves(3), waves(3, 0.05)]
    const found = findStretches(printsOf(span(0, 900).map(clean)), printsOf(order.map(noisy)))
    expect(found.map(({ from, to, shift }) => [from, to, from - shift])).toEqual([
      [0, 300, 600],
      [300, 335, 75],
      [335, 455, 300],
      [455, 515, 0],
      [515, 570, 425],
    ])
    for (const { sure, doubt } of found) {
      expect(sure).toBeGreaterThan(0.9)
      expect(doubt).toBe('')
    }
  })

  it('are none of a reel that shows nothing of the other, and of none', () => {
    const [one, other, none] = [
      printsOf(span(0, 300).map(waves(5))),
      printsOf(span(0, 300).map(waves(6))),
      printsOf([]),
    ]
    expect(findStretches(one, other)).toEqual([])
    expect(findStretches(none, one)).toEqual([])
    expect(findStretches(one, none)).toEqual([])
  })
})

describe('moving the cells of a print', () => {
  const whole = { left: 0, top: 0, right: 64, bottom: 36 }
  const area = commonArea(whole, whole)
  const cells = Float32Array.from(
    { length: PRINT_CELLS },
    (_, i) => Math.sin((i % PRINT_WIDTH) / 3) + Math.cos(Math.floor(i / PRINT_WIDTH) / 2),
  )

  it('leaves them where there is no move, and moves them by whole cells exactly', () => {
    const out = new Float32Array(PRINT_CELLS)
    cellMover(NO_SCAN_MOVE, area)(cells, out)
    expect(out).toEqual(cells)
    cellMover({ dx: 2, dy: -1, zoom: 1 }, area)(cells, out)
    expect(out[5 * PRINT_WIDTH + 10]).toBeCloseTo(cells[6 * PRINT_WIDTH + 8] ?? 0, 6)
  })

  it('moves a smooth picture by parts of a cell to within a hundredth', () => {
    const out = new Float32Array(PRINT_CELLS)
    cellMover({ dx: 0.3, dy: 0.4, zoom: 1 }, area)(cells, out)
    for (let y = 2; y < 16; y++)
      for (let x = 2; x < 30; x++)
        expect(
          Math.abs(
            (out[y * PRINT_WIDTH + x] ?? 0) - Math.sin((x - 0.3) / 3) - Math.cos((y - 0.4) / 2),
          ),
        ).toBeLessThan(0.01)
  })
})
