import { expect, test } from 'vitest'
import type { Problem } from '../../../src/core/base/problem.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { openMedia } from '../../../src/media/browser/openMedia.ts'
import { openVideoFile } from '../../../src/media/browser/openVideoFile.ts'
import { MediaError } from '../../../src/media/mediaError.ts'
import { fetchClip } from './fetchClip.ts'

const refusalOf = async (...files: readonly File[]): Promise<Problem> => {
  const opened = await openMedia(files)
  if (opened.ok) {
    opened.value.close()
    throw new Error(`${files[0]?.name} was opened`)
  }
  return opened.problems[0]
}

test.each([
  [
    'video/screencast-576p25-nocut.avi',
    /H\.264 pictures in AVI.*Read it at the command line, which uses ffmpeg/u,
  ],
  ['video/city-405p25-mpeg2.mpg', /MPEG-2 pictures in MPEG program stream/u],
  ['video/dv-pal-576p25-testcard.mov', /DV pictures in MOV.*cannot decode/u],
  ['numbered/mpeg2.mpegts', /MPEG-2 pictures in MPEG transport stream/u],
  ['numbered/mpeg2.mxf', /MPEG-2 pictures in MXF/u],
  ['numbered/ffv1-grey16.mkv', /FFV1 pictures in Matroska/u],
])('%s is refused by the names of its codec and container', async (path, says) => {
  const { code, says: said } = await refusalOf(await fetchClip(path))
  expect(said).toMatch(says)
  expect(code).toBe('cannot-decode')
})

test('a file put together from several stretches is refused, not shown wrongly', async () => {
  const { says } = await refusalOf(await fetchClip('numbered/h264-two-stretches.mp4'))
  expect(says).toMatch(/2 stretches by an edit list/u)
})

test('a name that promises another container changes nothing', async () => {
  const { says } = await refusalOf(await fetchClip('video/screencast-576p25-nocut.avi', 'reel.mp4'))
  expect(says).toMatch(/AVI/u)
  const opened = await openVideoFile(await fetchClip('numbered/h264-bframes-24.mp4', 'reel.avi'))
  expect(opened.ok && opened.value.facts.container).toBe('MP4')
})

test('empty files, text and sound are refused plainly', async () => {
  expect(await refusalOf(new File([], 'reel.mp4'))).toMatchObject({
    code: 'cannot-read',
    says: expect.stringContaining('empty'),
  })
  const text = new File(['Global cues for reel two\n'.repeat(50)], 'reel.mp4')
  expect((await refusalOf(text)).code).toBe('unknown-format')
  const playlist = new File(['#EXTM3U\n#EXTINF:4,\nhttp://127.0.0.1/part.ts\n'], 'reel.m3u8')
  expect((await refusalOf(playlist)).code).toBe('unknown-format')
  const sound = new File(['RIFF\u0024\0\0\0WAVEfmt '], 'sound.wav')
  expect((await refusalOf(sound)).code).toBe('cannot-decode')
})

test('no file, and several videos at once, are refused', async () => {
  expect((await refusalOf()).code).toBe('missing')
  const one = await fetchClip('numbered/h264-bframes-24.mp4')
  expect((await refusalOf(one, one)).code).toBe('conflict')
})

test.each([
  ['h264-bframes-24.mp4', 3000],
  ['h264-bframes-24.mp4', 900],
  ['h264-2398.mov', 3000],
  ['h264-fragmented-25.mp4', 3000],
  ['h264-2997.mkv', 3000],
  ['vp9-10bit-25.webm', 1500],
])('%s cut after %i bytes is refused as cut short', async (path, length) => {
  const whole = await fetchClip(`numbered/${path}`)
  const problem = await refusalOf(new File([whole.slice(0, length)], path))
  expect(problem.code).toBe('malformed')
  expect(problem.says).toMatch(/cut short: at least \d+ bytes are missing/u)
})

test('a transport stream cut short gives the pictures it holds and then ends or says so', async () => {
  const whole = await fetchClip('numbered/h264-25.mpegts')
  const opened = await openVideoFile(new File([whole.slice(0, 188 * 60)], 'short.ts'))
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const source = opened.value
  expect(source.facts.frames).toBeGreaterThan(10)
  expect(source.facts.frames).toBeLessThan(60)
  let next = 0
  for await (const step of source.readRange(frame(0), frame(source.facts.frames)))
    expect(step.frame).toBe(next++)
  expect(next).toBe(source.facts.frames)
  source.close()
})

/** Bytes of a clip with a stretch of them made noise, always the same. */
const withNoise = async (file: File, from: number, to: number): Promise<File> => {
  const bytes = new Uint8Array(await file.arrayBuffer())
  let state = 7
  for (let at = from; at < Math.min(to, bytes.length); at++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    bytes[at] = state >>> 24
  }
  return new File([bytes], file.name)
}

test.each([
  'h264-bframes-24.mp4',
  'h264-2997.mkv',
  'h264-25.mpegts',
  'vp9-10bit-25.webm',
  'av1-24.mp4',
  'prores-422-25.mov',
])(
  'noise anywhere in %s ends in a problem or in pictures, never in another error',
  async (path) => {
    const whole = await fetchClip(`numbered/${path}`)
    const step = Math.floor(whole.size / 6)
    for (let from = 4; from < whole.size; from += step) {
      const opened = await openVideoFile(await withNoise(whole, from, from + 200))
      if (!opened.ok) {
        expect(opened.problems[0].says).toContain(path)
        continue
      }
      const source = opened.value
      try {
        let last = -1
        for await (const read of source.readRange(frame(0), frame(source.facts.frames))) {
          expect(read.frame).toBe(last + 1)
          last = read.frame
        }
      } catch (error) {
        expect(error).toBeInstanceOf(MediaError)
      }
      source.close()
    }
  },
)
