import { afterEach, beforeEach, expect, test } from 'vitest'
import { frame } from '../../../src/core/time/frame.ts'
import { openVideoFile } from '../../../src/media/browser/openVideoFile.ts'
import type { FrameSource } from '../../../src/media/frameSource.ts'
import { MediaError } from '../../../src/media/mediaError.ts'
import { numberIn, seededFrames } from '../../media-layer/support/numberedClips.ts'
import { fetchClip } from './fetchClip.ts'

const Decoder = globalThis.VideoDecoder
let decoded: VideoFrame[] = []
let decoders: VideoDecoder[] = []

beforeEach(() => {
  decoded = []
  decoders = []
  globalThis.VideoDecoder = class extends Decoder {
    constructor({ output, error }: VideoDecoderInit) {
      super({
        output: (picture) => {
          decoded.push(picture)
          output(picture)
        },
        error,
      })
      decoders.push(this)
    }
  }
})

afterEach(() => {
  globalThis.VideoDecoder = Decoder
})

/** A closed VideoFrame has no size any more (WebCodecs, close algorithm). */
const openPictures = (): number => decoded.filter(({ codedWidth }) => codedWidth > 0).length
const openDecoders = (): number => decoders.filter(({ state }) => state !== 'closed').length

const open = async (path = 'h264-bframes-24.mp4'): Promise<FrameSource> => {
  const opened = await openVideoFile(await fetchClip(`numbered/${path}`))
  if (!opened.ok) throw new Error(opened.problems[0].says)
  return opened.value
}

const nothingLeft = async (): Promise<void> => {
  await expect.poll(openPictures).toBe(0)
  await expect.poll(openDecoders).toBe(0)
  expect(decoded.length).toBeGreaterThan(0)
}

test('nothing stays open after a whole range and close', async () => {
  const source = await open()
  for await (const step of source.readRange(frame(0), frame(60)))
    expect(step.frame).toBeLessThan(60)
  source.close()
  await nothingLeft()
})

test('leaving a range early, or aborting it, leaves nothing open', async () => {
  const source = await open()
  for await (const step of source.readRange(frame(5), frame(60))) if (step.frame === 9) break
  const stop = new AbortController()
  let seen = 0
  for await (const step of source.readRange(frame(0), frame(60), stop.signal)) {
    seen = step.frame
    if (step.frame === 4) stop.abort()
  }
  expect(seen).toBe(4)
  source.close()
  await nothingLeft()
})

test('a range that waits for its first frame ends when it is aborted', async () => {
  const source = await open()
  const stop = new AbortController()
  const range = source.readRange(frame(50), frame(60), stop.signal)
  const waiting = range.next()
  stop.abort()
  await waiting
  expect((await range.next()).done).toBe(true)
  source.close()
  await nothingLeft()
})

test('closing while frames are being read ends the reading', async () => {
  const source = await open()
  const range = source.readRange(frame(0), frame(60))
  await range.next()
  const reading = source.read(frame(55)).catch((error: unknown) => error)
  source.close()
  const outcome = await reading
  if (outcome instanceof Error) expect(outcome).toBeInstanceOf(MediaError)
  await range.return(undefined)
  await expect(source.read(frame(1))).rejects.toBeInstanceOf(MediaError)
  await nothingLeft()
})

test('a range and single reads at once do not disturb each other', async () => {
  const source = await open('h264-open-gop-25.mp4')
  const inTurn: number[] = []
  const ranging = (async () => {
    for await (const { planes } of source.readRange(frame(0), frame(60)))
      inTurn.push(numberIn(planes))
  })()
  const asked = seededFrames(20, 60, 5)
  const read = await Promise.all(asked.map((n) => source.read(frame(n))))
  await ranging
  source.close()
  expect(inTurn).toEqual(Array.from({ length: 60 }, (_, n) => n))
  expect(read.map(numberIn)).toEqual(asked)
})

/** Makes decoders hand out pictures without a readable format, as some graphics cards do. */
const hideFormats = (isHidden: (config: VideoDecoderConfig) => boolean): void => {
  const Counting = globalThis.VideoDecoder
  globalThis.VideoDecoder = class extends Counting {
    constructor({ output, error }: VideoDecoderInit) {
      super({
        output: (picture) => {
          if (this.isHiding) Object.defineProperty(picture, 'format', { value: null })
          output(picture)
        },
        error,
      })
    }
    isHiding = false
    override configure(config: VideoDecoderConfig): void {
      this.isHiding = isHidden(config)
      super.configure(config)
    }
  }
}

test('pictures that cannot be read from a graphics card are decoded in software', async () => {
  hideFormats(({ hardwareAcceleration }) => hardwareAcceleration !== 'prefer-software')
  const source = await open()
  for (const n of [20, 3]) expect(numberIn(await source.read(frame(n)))).toBe(n)
  source.close()
  await nothingLeft()
})

test('pictures that cannot be read at all are refused plainly', async () => {
  hideFormats(() => true)
  const opened = await openVideoFile(await fetchClip('numbered/h264-bframes-24.mp4'))
  expect(opened).toMatchObject({
    ok: false,
    problems: [{ code: 'cannot-decode', says: expect.stringContaining('this browser’s decoder') }],
  })
  await nothingLeft()
})

test('stepping back over frames passed on the way decodes nothing anew', async () => {
  const source = await open()
  await source.read(frame(40))
  const { length } = decoders
  for (let n = 39; n >= 30; n--) expect(numberIn(await source.read(frame(n)))).toBe(n)
  expect(decoders.length).toBe(length)
  for (let n = 29; n >= 0; n--) expect(numberIn(await source.read(frame(n)))).toBe(n)
  expect(decoders.length).toBeLessThanOrEqual(length + 2)
  source.close()
})

test('a frame outside the reel is refused and an empty range is empty', async () => {
  const source = await open()
  await expect(source.read(frame(60))).rejects.toMatchObject({ problem: { code: 'not-found' } })
  await expect(source.read(frame(-1))).rejects.toMatchObject({ problem: { code: 'not-found' } })
  for await (const step of source.readRange(frame(60), frame(80))) expect(step).toBeUndefined()
  expect(numberIn(await source.read(frame(59)))).toBe(59)
  source.close()
})
