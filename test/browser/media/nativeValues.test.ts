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
