import { expect, test } from 'vitest'
import { packCodedVideo, unpackCodedVideo } from '../../src/media/codedVideo.ts'

const bytesOf = async (blob: Blob) => new Uint8Array(await blob.arrayBuffer())

test('coded video comes back from its file as it was', async () => {
  const pictures = [
    { at: 50, isKey: true, data: Uint8Array.of(1, 2, 3) },
    { at: 51, isKey: false, data: new Uint8Array(0) },
    { at: 52, isKey: false, data: Uint8Array.of(9) },
  ]
  for (const description of [undefined, Uint8Array.of(7, 8)]) {
    const video = { codec: 'avc1.64001f', description, pictures }
    expect(unpackCodedVideo(await bytesOf(packCodedVideo(video)))).toEqual(video)
  }
})
