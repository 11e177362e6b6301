import { expect, test } from 'vitest'
import type { CodePicture } from '../../src/kernel/kernel.ts'
import { builtKernel } from './builtKernel.ts'
import { seeded } from './randomPictures.ts'

const kernel = await builtKernel()

/** The first index at which two lists of counts differ; −1 for none. */
const firstDifference = (counts: Uint32Array, wanted: Uint32Array): number =>
  counts.length === wanted.length ? counts.findIndex((count, i) => count !== wanted[i]) : 0

const SIZES = [
  [701, 211],
  [37, 23],
  [1, 1],
] as const

const randomCodes = (width: number, height: number): CodePicture => {
  const random = seeded(width)
  const plane = () => Uint16Array.from({ length: width * height }, () => random() * 1024)
  return { width, height, y: plane(), cb: plane(), cr: plane() }
}

test.each(SIZES)('the waveform of %i×%i counts every pixel at its column and level', (w, h) => {
  const codes = randomCodes(w, h)
  for (const columns of [1, 16, 37, 512]) {
    const wanted = new Uint32Array(columns * 256)
    codes.y.forEach((code, i) => {
      const column = Math.floor(((i % w) * columns) / w)
      const at = column * 256 + Math.floor(code / 4)
      wanted[at] = (wanted[at] ?? 0) + 1
    })
    expect(firstDifference(kernel.lumaWaveform(codes, columns), wanted)).toBe(-1)
  }
})

test.each(SIZES)('the vectorscope of %i×%i counts every pixel, +Cr at the top', (w, h) => {
  const codes = randomCodes(w, h)
  for (const size of [1, 128, 200, 256, 1024]) {
    const wanted = new Uint32Array(size * size)
    codes.cb.forEach((cb, i) => {
      const across = Math.floor((cb * size) / 1024)
      const up = Math.floor(((codes.cr[i] ?? 0) * size) / 1024)
      const at = (size - 1 - up) * size + across
      wanted[at] = (wanted[at] ?? 0) + 1
    })
    expect(firstDifference(kernel.vectorscope(codes, size), wanted)).toBe(-1)
  }
})

test('counts of the last picture do not stay in an array used again', () => {
  const codes = randomCodes(40, 30)
  const waveform = kernel.lumaWaveform(codes, 20)
  const scope = kernel.vectorscope(codes, 64)
  expect(kernel.lumaWaveform(codes, 20, waveform)).toBe(waveform)
  expect(kernel.vectorscope(codes, 64, scope)).toBe(scope)
  const sum = (counts: Uint32Array) => counts.reduce((total, count) => total + count, 0)
  expect(sum(waveform)).toBe(1200)
  expect(sum(scope)).toBe(1200)
})
