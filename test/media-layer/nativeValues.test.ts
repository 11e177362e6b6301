import { join, resolve } from 'node:path'
import { expect, test } from 'vitest'
import { frame } from '../../src/core/time/frame.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { RAMP_CLIPS, rampFaults } from './support/rampClips.ts'

const CLIPS = resolve(import.meta.dirname, '../media/numbered')

test.each(RAMP_CLIPS)('$file keeps every code value from black to peak', async (clip) => {
  const opened = await openMediaNode(join(CLIPS, clip.file))
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const source = opened.value
  expect(source.facts).toMatchObject(clip.facts)
  for await (const { frame: at, planes } of source.readRange(frame(0), frame(clip.facts.frames)))
    expect(rampFaults(planes, at)).toEqual([])
  source.close()
})

test('R′, G′ and B′ of a picture coded as three planes are told apart', async () => {
  const opened = await openMediaNode(join(CLIPS, 'h264-rgb-25.mp4'))
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const { samples } = await opened.value.read(frame(0))
  opened.value.close()
  const middles = samples.map((plane) => plane[40 * 128 + 64] ?? 0)
  expect(Math.abs((middles[0] ?? 0) - 40)).toBeLessThanOrEqual(4)
  expect(Math.abs((middles[1] ?? 0) - 100)).toBeLessThanOrEqual(4)
  expect(Math.abs((middles[2] ?? 0) - 60)).toBeLessThanOrEqual(4)
})

test('a grey picture of 16 bits keeps its values and gets neutral chroma', async () => {
  const opened = await openMediaNode(join(CLIPS, 'ffv1-grey16.mkv'))
  if (!opened.ok) throw new Error(opened.problems[0].says)
  expect(opened.value.facts).toMatchObject({ layout: '420', depth: 16, codec: 'FFV1', frames: 6 })
  const { samples } = await opened.value.read(frame(5))
  opened.value.close()
  expect([...samples[0].slice(0, 2)]).toEqual([40 * 256, 40 * 256])
  expect(samples[0][13 * 8]).toBe(200 * 256)
  expect(samples[0][90 * 128]).toBe((40 + 10) * 256)
  expect(new Set([...samples[1], ...samples[2]])).toEqual(new Set([2 ** 15]))
})

test('samples that must be rearranged keep their values, full range too', async () => {
  const opened = await openMediaNode(join(CLIPS, 'uncompressed-full.mkv'))
  if (!opened.ok) throw new Error(opened.problems[0].says)
  expect(opened.value.facts).toMatchObject({ layout: '422', depth: 8, range: 'full' })
  const { samples } = await opened.value.read(frame(0))
  opened.value.close()
  expect([...samples[0].subarray(0, 256)]).toEqual(Array.from({ length: 256 }, (_, x) => x))
  expect([...samples[1].subarray(0, 128)]).toEqual(Array.from({ length: 128 }, (_, x) => 2 * x))
  expect([...samples[2].subarray(0, 128)]).toEqual(
    Array.from({ length: 128 }, (_, x) => 255 - 2 * x),
  )
})
