import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { sniffCodec } from '../../src/media/sniffCodec.ts'
import { sniffContainer } from '../../src/media/sniffContainer.ts'

const MEDIA = resolve(import.meta.dirname, '../media')

test.each([
  ['numbered/h264-bframes-24.mp4', 'MP4'],
  ['numbered/h264-2398.mov', 'MOV'],
  ['numbered/h264-2997.mkv', 'Matroska'],
  ['numbered/vp8-hidden-25.webm', 'WebM'],
  ['numbered/h264-25.mpegts', 'MPEG transport stream'],
  ['numbered/mpeg2.mxf', 'MXF'],
  ['numbered/png16/reel_0086.png', 'PNG'],
  ['numbered/tiff16/reel_0086.tif', 'TIFF'],
  ['video/city-405p25-mpeg2.mpg', 'MPEG program stream'],
  ['video/screencast-576p25-nocut.avi', 'AVI'],
  ['video/dv-pal-576p25-testcard.mov', 'MOV'],
  ['make-numbered-clips.mjs', undefined],
])('%s is %s by its bytes', (path, kind) => {
  expect(sniffContainer(readFileSync(resolve(MEDIA, path)).subarray(0, 1024))).toBe(kind)
})

test('transport streams are known with a time code before each packet, and other text is not', () => {
  const packets = new Uint8Array(4 * 192)
  for (let at = 4; at < packets.length; at += 192) packets[at] = 0x47
  expect(sniffContainer(packets)).toBe('MPEG transport stream')
  expect(sniffContainer(new TextEncoder().encode('Global cues for reel two\n'.repeat(40)))).toBe(
    undefined,
  )
  expect(sniffContainer(new Uint8Array())).toBeUndefined()
})

const riff = (handler: string): Uint8Array =>
  new TextEncoder().encode(`RIFF----AVI LIST----hdrlavih----strh----vids${handler}`)

test.each([
  ['dvsd', 'DV'],
  ['XVID', 'MPEG-4 Visual'],
  ['MJPG', 'Motion JPEG'],
  ['zzzz', 'zzzz'],
])('an AVI file whose handler is %s holds %s', (handler, codec) => {
  expect(sniffCodec('AVI', riff(handler))).toBe(codec)
})

test('a codec is not guessed where the beginning does not tell', () => {
  expect(sniffCodec('AVI', riff('\0\0\0\0'))).toBeUndefined()
  expect(sniffCodec('MXF', new Uint8Array(4096))).toBeUndefined()
  expect(sniffCodec('Ogg', new Uint8Array(4096))).toBeUndefined()
})
