import { BlobSource, EncodedPacketSink, Input, MP4, WEBM } from 'mediabunny'
import { expect, test } from 'vitest'
import { frame } from '../../../src/core/time/frame.ts'
import { chooseEncoding } from '../../../src/media/browser/chooseEncoding.ts'
import { clipJob, makeHere, orderOf, startWorker, storeOf, wrongIn } from './clipPass.ts'
import { openHere } from './decoded.ts'

const FILE = { kind: 'file', file: undefined } as const

test.each(['h264', 'vp9', 'av1'] as const)(
  'a pass to %s has every frame, its tags, and levels within the codec’s loss',
  async (format) => {
    const { plan, file } = await clipJob('sound/tone-aac-25.mp4', {
      format,
      head: { bars: 1, slate: 1, leader: 1 },
    })
    const made = await makeHere(orderOf(plan, file, FILE))
    expect(wrongIn(made)).toEqual([])
    expect(made.findings.map(({ check }) => check)).toContain('cues')
    if (!made.file) throw new Error('there is no file')
    const written = await openHere([made.file])
    expect(written.facts).toMatchObject({
      ...{ frames: 125, width: 320, height: 180, rate: { num: 25, den: 1 }, depth: 8 },
      ...{ matrix: 'bt709', primaries: 'bt709', transfer: 'bt709', range: 'narrow' },
    })
    const scan = await openHere([file])
    // The first cue has no grade: its luma is the scan's own.
    for (const at of [0, 19]) {
      const { samples: was } = await scan.read(frame(at))
      const { samples: is } = await written.read(frame(75 + at))
      let squares = 0
      for (const [i, code] of was[0].entries()) squares += (code - (is[0][i] ?? 0)) ** 2
      const psnr = 10 * Math.log10(255 ** 2 / (squares / was[0].length))
      expect(psnr).toBeGreaterThan(40)
    }
    written.close()
    scan.close()
  },
)

test('pixels that are not square are stated so', async () => {
  const { plan, file } = await clipJob('sound/tone-aac-25.mp4', { format: 'h264' })
  const wide = {
    ...plan,
    reel: { ...plan.reel, media: { ...plan.reel.media, displayAspect: 2 } },
    coding: { ...plan.coding, pixelAspect: 1.125 },
  }
  const made = await makeHere(orderOf(wide, file, FILE))
  expect(wrongIn(made)).toEqual([])
  expect(made.findings.find(({ check }) => check === 'tags')?.standing).toBe('right')
})

const soundTimes = async (file: Blob) => {
  const input = new Input({ formats: [MP4, WEBM], source: new BlobSource(file) })
  const [track] = await input.getAudioTracks()
  if (!track) throw new Error('there is no sound')
  const packets: { time: number; data: string }[] = []
  for await (const { timestamp, data } of new EncodedPacketSink(track).packets())
    packets.push({ time: timestamp, data: data.join() })
  return { codec: await track.getCodec(), packets }
}

test.each([
  ['sound/tone-aac-25.mp4', 'h264', 'aac', 2],
  ['sound/tone-aac-25.mp4', 'h264', 'aac', 0],
  ['sound/tone-opus-25.webm', 'vp9', 'opus', 2],
  ['sound/tone-opus-25.webm', 'h264', 'opus', 2],
] as const)(
  'the sound of %s goes along to %s as it is: %s after %s s of head',
  async (path, format, codec, bars) => {
    const { plan, file } = await clipJob(path, { format, head: { bars, slate: 0, leader: 0 } })
    const made = await makeHere(orderOf(plan, file, FILE))
    expect(wrongIn(made)).toEqual([])
    expect(made.findings.find(({ check }) => check === 'sound')).toEqual({
      check: 'sound',
      standing: 'right',
      says: `The scan's ${codec} sound goes along as it is.`,
    })
    const was = await soundTimes(file)
    const is = await soundTimes(made.file ?? new Blob())
    expect(is.codec).toBe(codec)
    const pictures = new Input({ formats: [MP4, WEBM], source: new BlobSource(file) })
    const firstPicture = (await (await pictures.getVideoTracks())[0]?.getFirstTimestamp()) ?? 0
    const kept = was.packets.filter(({ time }) => time - firstPicture < 2)
    expect(is.packets.map(({ data }) => data)).toEqual(kept.map(({ data }) => data))
    // Times of WebM are whole milliseconds.
    for (const [i, { time }] of is.packets.entries())
      expect(Math.abs(time - ((kept[i]?.time ?? 0) - firstPicture + bars))).toBeLessThan(0.0011)
  },
)

test('sound that the container cannot hold is left out and named', async () => {
  const { plan, file } = await clipJob('sound/tone-aac-25.mp4', { format: 'vp9' })
  const made = await makeHere(orderOf(plan, file, FILE))
  expect(made.findings.find(({ check }) => check === 'sound')).toEqual({
    check: 'sound',
    standing: 'told',
    says: 'The sound of tone-aac-25.mp4 is aac, which WebM cannot hold as it is; it is left out.',
  })
})

test('what this browser cannot encode is refused by name, before anything is written', async () => {
  const { plan, file } = await clipJob('sound/tone-aac-25.mp4', { format: 'h264' })
  const media = { ...plan.reel.media, width: 40_000, height: 40_000 }
  const large = { ...plan, reel: { ...plan.reel, media } }
  expect(await chooseEncoding(large)).toMatchObject({ ok: false })
  const order = orderOf(large, file, FILE)
  const { call, end } = startWorker()
  expect(await call('make', order)).toEqual({
    ok: false,
    problems: [
      {
        code: 'cannot-decode',
        says: 'This browser cannot encode MP4, H.264 at 40000×40000; choose another format, or transfer at the command line.',
        at: { field: 'transfer.format' },
      },
    ],
  })
  end()
  expect(await (await storeOf(order)).begun()).toBeUndefined()
})
