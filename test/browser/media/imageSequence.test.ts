import { expect, test } from 'vitest'
import { frame } from '../../../src/core/time/frame.ts'
import { openMedia } from '../../../src/media/browser/openMedia.ts'
import { MediaError } from '../../../src/media/mediaError.ts'
import { numberIn, shapeFaults } from '../../media-layer/support/numberedClips.ts'
import {
  PICTURE_FACTS,
  PICTURE_FOLDERS,
  PICTURE_NUMBERS,
} from '../../media-layer/support/numberedPictures.ts'
import { orThrow } from '../../media-layer/support/orThrow.ts'
import { fetchClip } from './fetchClip.ts'

const fetchFolder = (folder: string, extension: string): Promise<File[]> =>
  Promise.all(PICTURE_NUMBERS.map((n) => fetchClip(`numbered/${folder}/reel_00${n}.${extension}`)))

test.each(PICTURE_FOLDERS)('$folder: every picture in the order of its number', async (given) => {
  const files = await fetchFolder(given.folder, given.extension)
  const source = orThrow(await openMedia([...files].reverse()))
  expect(source.facts).toMatchObject({ ...PICTURE_FACTS, ...given.facts })
  expect(source.facts.bytes).toBe(files.reduce((sum, { size }) => sum + size, 0))
  const read: number[] = []
  for await (const { planes } of source.readRange(frame(0), frame(5))) {
    read.push(numberIn(planes))
    expect(shapeFaults(planes, source.facts)).toEqual([])
  }
  expect(read).toEqual(PICTURE_NUMBERS)
  const { samples } = await source.read(frame(3))
  const scale = source.facts.depth === 16 ? 256 : 1
  expect([...samples.slice(1)].map((plane) => plane[777])).toEqual([100 * scale, 60 * scale])
  source.close()
  await expect(source.read(frame(3))).rejects.toBeInstanceOf(MediaError)
})

test('pictures of another depth among them are told by name when they are reached', async () => {
  const files = await fetchFolder('png8', 'png')
  files[2] = await fetchClip('numbered/png16/reel_0088.png')
  const source = orThrow(await openMedia(files))
  await source.read(frame(1))
  await expect(source.read(frame(2))).rejects.toMatchObject({
    problem: { code: 'conflict', says: expect.stringContaining('reel_0088.png') },
  })
})

test('a picture under a video’s name is still a picture; one alone is a reel of one', async () => {
  const file = await fetchClip('numbered/png8/reel_0087.png', 'reel.mp4')
  const source = orThrow(await openMedia([file]))
  expect(source.facts).toMatchObject({ frames: 1, container: 'PNG picture', name: 'reel.mp4' })
  expect(numberIn(await source.read(frame(0)))).toBe(87)
})

test('a JPEG picture is refused with what to do', async () => {
  const opened = await openMedia([new File([Uint8Array.of(0xff, 0xd8, 0xff, 0xe0)], 'a.jpg')])
  expect(opened).toMatchObject({
    ok: false,
    problems: [{ says: expect.stringMatching(/JPEG.*Convert it to DPX, PNG or TIFF/u) }],
  })
})
