import { execFileSync } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { frame } from '../../src/core/time/frame.ts'
import { openPicturesNode } from '../../src/media/node/imageSequenceNode.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { numberIn, shapeFaults } from './support/numberedClips.ts'
import { PICTURE_FACTS, PICTURE_FOLDERS, PICTURE_NUMBERS } from './support/numberedPictures.ts'
import { orThrow } from './support/orThrow.ts'

const MEDIA = resolve(import.meta.dirname, '../media')
const CLIPS = join(MEDIA, 'numbered')
const temporary = mkdtempSync(join(tmpdir(), 'media-'))
afterAll(() => rmSync(temporary, { recursive: true }))

const write = (name: string, bytes: string | Uint8Array): string => {
  const path = join(temporary, name)
  writeFileSync(path, bytes)
  return path
}

const saysOf = async (path: string): Promise<string> => {
  const opened = await openMediaNode(path)
  if (!opened.ok) return opened.problems[0].says
  opened.value.close()
  return 'opened'
}

test.each(PICTURE_FOLDERS)(
  '$folder: a folder is read in the order of the numbers',
  async (given) => {
    const source = orThrow(await openMediaNode(join(CLIPS, given.folder)))
    expect(source.facts).toMatchObject({ ...PICTURE_FACTS, ...given.facts })
    const read: number[] = []
    for await (const { planes } of source.readRange(frame(0), frame(5))) {
      read.push(numberIn(planes))
      expect(shapeFaults(planes, source.facts)).toEqual([])
    }
    expect(read).toEqual(PICTURE_NUMBERS)
  },
)

test('one picture of a sequence means the whole sequence, without its neighbours', async () => {
  const folder = join(temporary, 'mixed')
  mkdirSync(folder)
  for (const n of PICTURE_NUMBERS) {
    copyFileSync(join(CLIPS, `png8/reel_00${n}.png`), join(folder, `one_00${n}.png`))
    copyFileSync(join(CLIPS, `tiff8/reel_00${n}.tif`), join(folder, `two_00${n}.tif`))
  }
  const source = orThrow(await openMediaNode(join(folder, 'two_0088.tif')))
  expect(source.facts).toMatchObject({ frames: 5, codec: 'TIFF', name: 'two_####.tif' })
  expect(numberIn(await source.read(frame(2)))).toBe(88)
  expect(await saysOf(folder)).toMatch(/belong to different sequences/u)
})

test('pictures may be given by their paths, and a missing one is named', async () => {
  const paths = [88, 87].map((n) => join(CLIPS, `png8/reel_00${n}.png`))
  const source = orThrow(await openPicturesNode(paths))
  expect(numberIn(await source.read(frame(0)))).toBe(87)
  const absent = await openPicturesNode([...paths, join(CLIPS, 'png8/reel_0099.png')])
  expect(absent.ok ? '' : absent.problems[0].says).toMatch(/reel_0099\.png is not there/u)
})

test('a picture without a number is a reel of one frame', async () => {
  const path = write('title.dat', readFileSync(join(CLIPS, 'png8/reel_0090.png')))
  const source = orThrow(await openMediaNode(path))
  expect(source.facts).toMatchObject({ frames: 1, container: 'PNG picture' })
})

test.each([
  ['screencast-576p25-nocut.avi', { container: 'AVI', codec: 'H.264', frames: 208 }],
  ['city-405p25-mpeg2.mpg', { container: 'MPEG program stream', codec: 'MPEG-2', frames: 190 }],
  ['dv-pal-576p25-testcard.mov', { container: 'MOV', codec: 'DV', frames: 25 }],
  ['nasa-13013-multistream.mp4', { container: 'MP4', width: 320, frames: 325 }],
])('video/%s is read, though no browser may', async (name, facts) => {
  const source = orThrow(await openMediaNode(join(MEDIA, 'video', name)))
  expect(source.facts).toMatchObject({ ...facts, rate: { num: 25, den: 1 } })
  const planes = await source.read(frame(7))
  expect(shapeFaults(planes, source.facts)).toEqual([])
  source.close()
})

test('what is no reel is refused by what its bytes say', async () => {
  expect(await saysOf(join(temporary, 'absent.mp4'))).toMatch(/is not there/u)
  expect(await saysOf(write('empty.mp4', ''))).toMatch(/is empty/u)
  expect(await saysOf(write('notes.mp4', 'Global cues for reel two\n'.repeat(50)))).toMatch(
    /is not a video or picture/u,
  )
  expect(await saysOf(write('list.mp4', "ffconcat version 1.0\nfile '/etc/passwd'\n"))).toMatch(
    /is not a video or picture/u,
  )
  expect(await saysOf(write('a.jpg', Uint8Array.of(0xff, 0xd8, 0xff, 0xe0)))).toMatch(/JPEG/u)
  expect(await saysOf('/dev/null')).toMatch(/is not a file/u)
  mkdirSync(join(temporary, 'nothing'))
  expect(await saysOf(join(temporary, 'nothing'))).toMatch(/holds no DPX, PNG or TIFF pictures/u)
})

test.each(['h264-bframes-24.mp4', 'h264-2398.mov', 'h264-2997.mkv', 'vp9-10bit-25.webm'])(
  '%s cut short is refused as cut short',
  async (name) => {
    const whole = readFileSync(join(CLIPS, name))
    const path = write(name, whole.subarray(0, Math.floor(whole.length * 0.6)))
    expect(await saysOf(path)).toMatch(/cut short: at least \d+ bytes are missing/u)
  },
)

test('names that look like options, protocols or patterns are only names', async () => {
  for (const name of ['-y.mp4', 'concat:a|b.mp4', 'http:x.mp4', 'reel%03d.mp4', 'a b;c$(d).mp4']) {
    const path = write(name, readFileSync(join(CLIPS, 'h264-bframes-24.mp4')))
    const source = orThrow(await openMediaNode(path))
    expect(source.facts).toMatchObject({ name, frames: 60 })
    expect(numberIn(await source.read(frame(2)))).toBe(2)
    source.close()
  }
})

test('sound alone is refused as that, and not sent to where it already is', async () => {
  const path = join(temporary, 'sound.mp4')
  execFileSync('ffmpeg', ['-v', 'error', '-f', 'lavfi', '-i', 'sine=d=0.2', '-c:a', 'aac', path])
  expect(await saysOf(path)).toBe('sound.mp4 (MP4) has no video track; give a video.')
})
