import { expect, test } from 'vitest'
import { frame } from '../../../src/core/time/frame.ts'
import { openVideoFile } from '../../../src/media/browser/openVideoFile.ts'
import { RAMP_CLIPS, rampFaults } from '../../media-layer/support/rampClips.ts'
import { fetchClip } from './fetchClip.ts'

test.each(RAMP_CLIPS)('$file keeps every code value from black to peak', async (clip) => {
  const opened = await openVideoFile(await fetchClip(`numbered/${clip.file}`))
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const source = opened.value
  expect(source.facts).toMatchObject(clip.facts)
  for await (const { frame: at, planes } of source.readRange(frame(0), frame(clip.facts.frames)))
    expect(rampFaults(planes, at)).toEqual([])
  source.close()
})

test('R′, G′ and B′ of a picture coded as three planes are told apart', async () => {
  const opened = await openVideoFile(await fetchClip('numbered/h264-rgb-25.mp4'))
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const { samples } = await opened.value.read(frame(0))
  opened.value.close()
  const middles = samples.map((plane) => plane[40 * 128 + 64] ?? 0)
  expect(Math.abs((middles[0] ?? 0) - 40)).toBeLessThanOrEqual(4)
  expect(Math.abs((middles[1] ?? 0) - 100)).toBeLessThanOrEqual(4)
  expect(Math.abs((middles[2] ?? 0) - 60)).toBeLessThanOrEqual(4)
})

test.each([
  ['prores-422-25.mov', 4],
  ['prores-4444-24.mov', 16],
] as const)('%s gives its codes at the depth it was coded with', async (file, scale) => {
  const opened = await openVideoFile(await fetchClip(`numbered/${file}`))
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const { samples, width, layout } = await opened.value.read(frame(5))
  opened.value.close()
  // Number 5: the columns of bits 14 and 16 are bright, 200 of 255 as 8 bits, the others 40.
  for (const [column, drawn] of [40, 200, 40, 200].map((value, i) => [12 + i, value] as const)) {
    const read = samples[0][24 * width + 8 * column + 4] ?? Number.NaN
    expect(Math.abs(read - drawn * scale)).toBeLessThanOrEqual(2 * scale)
  }
  const middle = 24 * (layout === '422' ? width / 2 : width) + 20
  for (const [plane, drawn] of [
    [1, 118],
    [2, 140],
  ] as const)
    expect(Math.abs((samples[plane][middle] ?? Number.NaN) - drawn * scale)).toBeLessThanOrEqual(
      scale,
    )
})
