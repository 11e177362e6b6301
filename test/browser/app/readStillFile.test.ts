import { expect, it } from 'vitest'
import { readStillFile } from '../../../src/app/readStillFile.ts'
import { fetchClip } from '../media/fetchClip.ts'

it('a still is read in a worker as full-range R′G′B′ that needs no base', async () => {
  const { planes, coding } = await readStillFile(await fetchClip('stills/coffee-128.png'))
  expect(planes).toMatchObject({ layout: 'rgb', depth: 8 })
  expect(planes.samples[0]).toHaveLength(planes.width * planes.height)
  expect(new Set(planes.samples[0]).size).toBeGreaterThan(50)
  expect(coding).toMatchObject({ range: 'full', pixelAspect: 1 })
  const deep = await readStillFile(await fetchClip('numbered/tiff16/reel_0086.tif'))
  expect(deep.planes.depth).toBe(16)
})

it('what is no still is refused in a sentence that names it', async () => {
  await expect(readStillFile(await fetchClip('numbered/h264-25.mpegts'))).rejects.toThrow(
    /h264-25\.mpegts/u,
  )
  await expect(readStillFile(await fetchClip('numbered/av1-24.mp4'))).rejects.toThrow(
    'av1-24.mp4 is not a still; choose a PNG, TIFF or DPX picture.',
  )
  await expect(readStillFile(new File(['no picture'], 'odd.png'))).rejects.toThrow(/odd\.png/u)
})
