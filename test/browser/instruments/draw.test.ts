import { describe, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { levelInUnit } from '../../../src/core/colour/levelUnits.ts'
import { yCbCrToRgb } from '../../../src/core/colour/yCbCr.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import type { MatrixName, Planes } from '../../../src/core/picture/planes.ts'
import { EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'
import { referenceKernel } from '../../../src/kernel/referenceKernel.ts'
import { drawHistogram } from '../../../src/render/drawHistogram.ts'
import { type LevelStyle, levelPlot } from '../../../src/render/drawLevelAxis.ts'
import { drawOverlay } from '../../../src/render/drawOverlay.ts'
import { drawParade } from '../../../src/render/drawParade.ts'
import { drawVectorscope, isVectorscopeCut } from '../../../src/render/drawVectorscope.ts'
import { drawWaveform } from '../../../src/render/drawWaveform.ts'
import { levelScale } from '../../../src/render/levelScale.ts'
import { vectorscopeTargets } from '../../../src/render/vectorscopeTargets.ts'
import vectors from '../../vectors/bars.json' with { type: 'json' }

const WIDTH = 424
const HEIGHT = 180
const STYLE: LevelStyle = { width: WIDTH, height: HEIGHT, unit: 'percent', limits: null }
const BAR = 10
const ROWS = 4

const barsOf = (matrix: MatrixName, amplitude: number) =>
  vectors.rows.filter((row) => row.matrix === matrix && row.amplitude === amplitude)

/** Bars beside each other, as 10-bit Y′CbCr. */
const planesOfBars = (codes: readonly (readonly number[])[]): Planes => {
  const width = codes.length * BAR
  const plane = (p: number) =>
    Uint16Array.from({ length: width * ROWS }, (_, i) => {
      const bar = codes[Math.floor((i % width) / BAR)]
      return bar?.[p] ?? 0
    })
  const samples = [plane(0), plane(1), plane(2)] as const
  return { width, height: ROWS, layout: '444', depth: 10, samples }
}

const measured = (planes: Planes, matrix: MatrixName, gain = 1, size = 256) => {
  const input = {
    planes,
    coding: { matrix, range: 'narrow' },
    grade: { ...IDENTITY_GRADE, gain: [gain, gain, gain] },
    framing: IDENTITY_FRAMING,
  } as const
  const columns = planes.width
  const { waveform, parade, histograms, vectorscope } = referenceKernel().measurePicture(
    input,
    matrix,
    EBU_R103_V3,
    {
      waveformColumns: columns,
      paradeColumns: columns,
      histograms: true,
      vectorscopeSize: size,
    },
  )
  if (!waveform || !parade || !histograms || !vectorscope) throw new Error('all were asked for')
  return {
    waveform: { counts: waveform, columns },
    channels: { counts: parade, columns },
    histograms,
    vectorscope: { counts: vectorscope, size },
  }
}

const drawn = (draw: (context: CanvasRenderingContext2D) => void, height = HEIGHT) => {
  const canvas = document.createElement('canvas')
  canvas.width = WIDTH
  canvas.height = height
  const context = canvas.getContext('2d')
  if (!context) throw new Error('no canvas')
  draw(context)
  const { data } = context.getImageData(0, 0, WIDTH, height)
  return (x: number, y: number) => {
    const at = (Math.round(y) * WIDTH + Math.round(x)) * 4
    return { r: data[at] ?? 0, g: data[at + 1] ?? 0, b: data[at + 2] ?? 0 }
  }
}

type Pixel = ReturnType<ReturnType<typeof drawn>>
const sum = ({ r, g, b }: Pixel): number => r + g + b

/** The height of the middle of what is bright in a column of pixels. */
const brightPlaces = (pixel: (x: number, y: number) => Pixel, x: number, least = 330): number[] => {
  const groups: number[][] = []
  for (let y = 4; y < HEIGHT - 4; y++) {
    if (sum(pixel(x, y)) < least) continue
    const last = groups.at(-1)
    if (last && y - (last.at(-1) ?? 0) === 1) last.push(y)
    else groups.push([y])
  }
  return groups.map((group) => group.reduce((total, y) => total + y, 0) / group.length)
}

const plot = levelPlot(STYLE)
const middleOf = (bar: number, bars: number, left = plot.left, right = plot.right): number =>
  left + ((bar + 0.5) / bars) * (right - left)

describe('a waveform', () => {
  it.each(['bt601', 'bt709'] as const)(
    'of bars at three quarters by %s has the published staircase',
    (matrix) => {
      const bars = barsOf(matrix, 0.75)
      const { waveform } = measured(planesOfBars(bars.map(({ code10 }) => code10)), matrix)
      for (const unit of ['percent', 'millivolts', 'code'] as const) {
        const pixel = drawn((context) => drawWaveform(context, waveform, { ...STYLE, unit }))
        for (const [i, { lumaMv }] of bars.entries()) {
          const places = brightPlaces(pixel, middleOf(i, bars.length))
          expect(places).toHaveLength(1)
          expect(Math.abs((places[0] ?? 0) + 0.5 - plot.levels.place(lumaMv / 700))).toBeLessThan(
            1.1,
          )
        }
      }
    },
  )

  it('marks at its edges where signal lies past them, and draws none of it elsewhere', () => {
    const codes = [500, 1000, 70].map((y) => [y, 512, 512])
    const loud = measured(planesOfBars(codes), 'bt709', 1.5)
    const pixel = drawn((context) => drawWaveform(context, loud.waveform, STYLE))
    expect([0, 1, 2].map((i) => sum(pixel(middleOf(i, 3), 1)) > 700)).toEqual([false, true, false])
    expect(brightPlaces(pixel, middleOf(1, 3))).toEqual([])
    expect(sum(pixel(middleOf(1, 3), HEIGHT - 2))).toBeLessThan(300)
  })

  it('has the tolerance as broken lines at their level', () => {
    const { limits } = { limits: EBU_R103_V3.luma }
    const pixel = drawn((context) => drawWaveform(context, undefined, { ...STYLE, limits }))
    for (const limit of limits) {
      const y = Math.round(plot.levels.place(limit))
      const along = Array.from({ length: 60 }, (_, i) => sum(pixel(plot.left + 40 + i, y)) > 500)
      const lit = along.filter(Boolean).length
      expect(lit).toBeGreaterThan(20)
      expect(lit).toBeLessThan(40)
    }
  })
})

describe('waveforms of the channels', () => {
  const bars = barsOf('bt709', 0.75)
  const planes = planesOfBars(bars.map(({ code10 }) => code10))
  const { channels } = measured(planes, 'bt709')
  const place = plot.levels.place

  it('stand beside each other in a parade, each at 0 or at 75 % for bars', () => {
    const pixel = drawn((context) => drawParade(context, channels, STYLE))
    const wide = (plot.right - plot.left - 12) / 3
    for (const channel of [0, 1, 2] as const)
      for (const [i, { bar, code10 }] of bars.entries()) {
        const [y = 0, cb = 0, cr = 0] = code10
        const colour = yCbCrToRgb([(y - 64) / 876, (cb - 512) / 896, (cr - 512) / 896], 'bt709')
        const left = plot.left + channel * (wide + 6)
        const x = middleOf(i, bars.length, left, left + wide)
        // The lowest: the name of the channel stands above the first bar.
        const found = brightPlaces(pixel, x, 280).at(-1) ?? 0
        expect(Math.abs(found + 0.5 - place(colour[channel])), bar).toBeLessThan(1.6)
      }
  })

  it('lie over each other in an overlay: white where all are, else in their inks', () => {
    const pixel = drawn((context) => drawOverlay(context, channels, STYLE))
    const at = (bar: string, level: number) =>
      pixel(
        middleOf(
          bars.findIndex((row) => row.bar === bar),
          bars.length,
        ),
        place(level) - 0.5,
      )
    const white = at('white', 0.75)
    expect(Math.max(white.r, white.g, white.b) - Math.min(white.r, white.g, white.b)).toBeLessThan(
      20,
    )
    expect(sum(white)).toBeGreaterThan(600)
    const red = at('red', 0.75)
    expect(red.r).toBeGreaterThan(red.b + 60)
    const blue = at('blue', 0.75)
    expect(blue.b).toBeGreaterThan(blue.r + 60)
    const yellow = at('yellow', 0.75)
    expect(Math.min(yellow.r, yellow.g)).toBeGreaterThan(yellow.b + 20)
  })
})

describe('a histogram', () => {
  it('has a peak at each level of the picture, in every unit, and marks what is past its ends', () => {
    const levels = [200, 700]
    const { histograms } = measured(planesOfBars(levels.map((y) => [y, 512, 512])), 'bt709')
    for (const unit of ['percent', 'millivolts', 'code'] as const) {
      const style = { width: WIDTH, height: HEIGHT, unit, luma: [0, 1], rgb: null } as const
      const pixel = drawn((context) => drawHistogram(context, histograms, style))
      const { scale } = levelScale(unit, 40, WIDTH - 14)
      for (const code of levels) {
        const x = scale(levelInUnit((code - 64) / 876, unit))
        const column = [x - 1, x, x + 1].map((near) => sum(pixel(near, 50)))
        expect(Math.max(...column)).toBeGreaterThan(300)
      }
      expect(sum(pixel(scale(levelInUnit(0.45, unit)), 50))).toBeLessThan(200)
    }
    const loud = measured(planesOfBars(levels.map((y) => [y, 512, 512])), 'bt709', 2)
    const style = {
      width: WIDTH,
      height: HEIGHT,
      unit: 'percent',
      luma: [0, 1],
      rgb: null,
    } as const
    const pixel = drawn((context) => drawHistogram(context, loud.histograms, style))
    expect(sum(pixel(WIDTH - 16, 60))).toBeGreaterThan(700)
    expect(sum(pixel(41, 60))).toBeLessThan(300)
  })
})

describe('a vectorscope', () => {
  const half = HEIGHT / 2
  const placeOf = (chroma: number, reach: number): number => (chroma / reach) * half
  const style = { width: WIDTH, height: HEIGHT, matrix: 'bt709', isEnlarged: false } as const

  it.each(['bt601', 'bt709'] as const)(
    'has bars at three quarters by %s inside their boxes',
    (matrix) => {
      const bars = barsOf(matrix, 0.75)
      const { vectorscope } = measured(planesOfBars(bars.map(({ code10 }) => code10)), matrix)
      const of = (scope: typeof vectorscope | undefined) =>
        drawn((context) => drawVectorscope(context, scope, { ...style, matrix }))
      const [pixel, empty] = [of(vectorscope), of(undefined)]
      const found = vectorscopeTargets(matrix, 0.75).map(({ cb, cr }) => {
        const [x, y] = [WIDTH / 2 + placeOf(cb, 0.58), half - placeOf(cr, 0.58)]
        let most = 0
        for (let dx = -3; dx <= 3; dx++)
          for (let dy = -3; dy <= 3; dy++)
            most = Math.max(most, sum(pixel(x + dx, y + dy)) - sum(empty(x + dx, y + dy)))
        return most > 150
      })
      expect(found).toEqual([true, true, true, true, true, true])
    },
  )

  it('shows its middle twice as large on request, and says when colours lie outside', () => {
    const codes = [[500, 512, 512 + 90]]
    const small = measured(planesOfBars(codes), 'bt709')
    const fine = measured(planesOfBars(codes), 'bt709', 1, 512)
    const highest = (pixel: (x: number, y: number) => Pixel) => {
      for (let y = 20; y < half - 8; y++) if (sum(pixel(WIDTH / 2, y)) > 280) return half - y
      return 0
    }
    const plain = highest(drawn((context) => drawVectorscope(context, small.vectorscope, style)))
    const large = highest(
      drawn((context) =>
        drawVectorscope(context, fine.vectorscope, { ...style, isEnlarged: true }),
      ),
    )
    expect(Math.abs(plain - placeOf(90 / 896, 0.58))).toBeLessThan(2)
    expect(Math.abs(large - placeOf(90 / 896, 0.29))).toBeLessThan(2)
    expect(isVectorscopeCut(fine.vectorscope, true)).toBe(false)
    const bars = measured(planesOfBars(barsOf('bt709', 1).map(({ code10 }) => code10)), 'bt709')
    expect(isVectorscopeCut(bars.vectorscope, false)).toBe(false)
    expect(isVectorscopeCut(bars.vectorscope, true)).toBe(true)
  })
})
