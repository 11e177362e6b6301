import { execFileSync } from 'node:child_process'
import { expect, test } from 'vitest'
import { askedFormat, type PixelFormat } from '../../src/media/node/pixelFormat.ts'

const formats = (
  JSON.parse(
    execFileSync('ffprobe', ['-v', 'error', '-of', 'json', '-show_pixel_formats']).toString(),
  ) as { pixel_formats: readonly PixelFormat[] }
).pixel_formats

const asked = (name: string) => {
  const format = formats.find((each) => each.name === name)
  if (!format) throw new Error(`ffprobe knows no ${name}`)
  return askedFormat(format)
}

test.each([
  ['yuv420p', 'yuv420p', '420', 8],
  ['yuvj420p', 'yuvj420p', '420', 8],
  ['nv12', 'yuv420p', '420', 8],
  ['p010le', 'yuv420p10le', '420', 10],
  ['p210le', 'yuv422p10le', '422', 10],
  ['uyvy422', 'yuv422p', '422', 8],
  ['yuv411p', 'yuv422p', '422', 8],
  ['yuvj440p', 'yuvj444p', '444', 8],
  ['yuv422p9be', 'yuv422p10le', '422', 10],
  ['yuv422p12le', 'yuv422p12le', '422', 12],
  ['yuva444p12le', 'yuv444p12le', '444', 12],
  ['yuv420p14le', 'yuv420p16le', '420', 16],
  ['rgb24', 'gbrp', 'rgb', 8],
  ['pal8', 'gbrp', 'rgb', 8],
  ['rgb48be', 'gbrp16le', 'rgb', 16],
  ['gbrp10le', 'gbrp10le', 'rgb', 10],
  ['gbrap12le', 'gbrp12le', 'rgb', 12],
])('%s is asked for as %s', (name, ask, layout, depth) => {
  expect(asked(name)).toEqual({ ask, layout, depth, isGrey: false, isConverted: ask !== name })
})

test.each([
  ['gray', 'gray', 8],
  ['gray10le', 'gray10le', 10],
  ['ya8', 'gray', 8],
  ['ya16be', 'gray16le', 16],
])('%s is luma alone, asked for as %s', (name, ask, depth) => {
  expect(asked(name)).toMatchObject({ ask, depth, layout: '420', isGrey: true })
})

test.each(['xyz12le', 'gbrpf32le', 'grayf32le', 'bayer_rggb16le', 'vaapi'])(
  '%s has no place here',
  (name) => {
    expect(asked(name)).toBeUndefined()
  },
)

test('whatever else ffmpeg knows is asked for as a format ffmpeg knows', () => {
  const names = new Set(formats.map(({ name }) => name))
  for (const format of formats) {
    const answer = askedFormat(format)
    if (answer) expect(names, format.name).toContain(answer.ask)
  }
})
