import { expect, test } from 'vitest'
import { createFeed } from '../../src/app/feed.ts'
import { createInstrumentDesk } from '../../src/app/instrumentDesk.ts'
import type { Workers } from '../../src/app/workers.ts'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import { frame } from '../../src/core/time/frame.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob } from '../../src/store/document.ts'
import { setInstruments } from '../../src/store/instrumentSettings.ts'
import type { ShownFrame } from '../../src/ui/services.ts'
import type { InstrumentReading, InstrumentRequest } from '../../src/work/instrumentCalls.ts'
import { seeded, shadedPlanes } from '../kernel/randomPictures.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

const LEVELS: InstrumentReading['levels'] = {
  ...{ r: { low: 0, high: 1 }, g: { low: 0, high: 1 }, b: { low: 0, high: 1 } },
  ...{ y: { low: 0, high: 1 }, below: 0, above: 0, outside: 0, pixels: 9 },
}

/** A desk whose worker answers when it is told to. */
const setUp = () => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  store.setState({ reelId: REEL_ID, media: 'ready' })
  const frames = createFeed<ShownFrame>()
  const asked: InstrumentRequest[] = []
  const answers: (() => void)[] = []
  let framesSent = 0
  const instruments = ((name: string, args: InstrumentRequest) => {
    if (name === 'setFrame') {
      framesSent++
      return Promise.resolve(undefined)
    }
    asked.push(args)
    const { waveformColumns = 0 } = args.wants
    const waveform = new Uint32Array(waveformColumns * 256)
    const shown = { vectorscope: new Uint32Array(9), ...(waveformColumns && { waveform }) }
    return new Promise((resolve) => answers.push(() => resolve({ shown, levels: LEVELS })))
  }) as unknown as Workers['instruments']
  const desk = createInstrumentDesk(store, { instruments }, frames)
  const rest = () => new Promise((resolve) => setTimeout(resolve))
  const put = () =>
    frames.put({
      frame: frame(3),
      planes: shadedPlanes(seeded(1), '420', 8, 32, 20),
      coding: { matrix: 'bt709', range: 'narrow' },
    })
  const gain = (value: number) => {
    desk.measure({ ...IDENTITY_GRADE, gain: [value, value, value] }, IDENTITY_FRAMING)
    return rest()
  }
  const answer = async () => {
    answers.shift()?.()
    await rest()
  }
  const gains = () => asked.map((request) => request.grade.gain[0])
  return { store, desk, put, gain, answer, gains, asked, rest, framesSent: () => framesSent }
}

test('while a reading is made, the latest of what is asked waits and the rest is let go', async () => {
  const { put, gain, answer, gains, framesSent } = setUp()
  put()
  await gain(1)
  await gain(1.1)
  await gain(1.2)
  await gain(1.3)
  expect(gains()).toEqual([1])
  await answer()
  expect(gains()).toEqual([1, 1.3])
  await answer()
  expect(gains()).toEqual([1, 1.3])
  expect(framesSent()).toBe(1)
})

test('another instrument or signal is measured at once; another unit needs no measuring', async () => {
  const { store, desk, put, gain, answer, asked, rest } = setUp()
  put()
  await gain(1)
  await answer()
  expect(asked[0]?.wants.waveformColumns).toBe(32)
  expect(desk.readings.current()?.waveform?.columns).toBe(32)
  setInstruments(store, { unit: 'millivolts' })
  await rest()
  expect(asked).toHaveLength(1)
  setInstruments(store, { levels: 'parade' })
  await rest()
  expect(asked[1]?.wants).toEqual({ paradeColumns: 32, vectorscopeSize: 256 })
  await answer()
  expect(desk.readings.current()?.waveform).toBeUndefined()
  setInstruments(store, { signal: 'scanned', levels: 'histogram' })
  await rest()
  expect(asked[2]?.signal).toBe('scanned')
  expect(asked[2]?.wants).toEqual({ histograms: true, vectorscopeSize: 256 })
})

test('levels of the frame go into the store', async () => {
  const { store, put, gain, answer } = setUp()
  put()
  await gain(1)
  await answer()
  expect(store.getState().levels).toBe(LEVELS)
})

test('while something is dragged it is measured coarsely, and whole once it rests', async () => {
  const { store, put, gain, answer, asked } = setUp()
  put()
  store.setState({ gesture: 'gain all 1' })
  await gain(1)
  await gain(1.1)
  store.setState({ gesture: undefined })
  await gain(1.1)
  await answer()
  expect(asked.map(({ isCoarse }) => isCoarse)).toEqual([true, false])
})
