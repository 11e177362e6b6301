import { describe, expect, it } from 'vitest'
import { kWeightingAt } from '../../../src/core/sound/kWeighting.ts'
import { createSoundMeter, type SoundFacts } from '../../../src/core/sound/measureSound.ts'

const RATE = 48_000

/** Seconds of a sine at a level in dBFS, after others. */
type Part = { readonly seconds: number; readonly level: number; readonly hz?: number }

const sines = (parts: readonly Part[], rate = RATE): Float32Array => {
  const count = (seconds: number) => Math.round(seconds * rate)
  const all = new Float32Array(parts.reduce((sum, { seconds }) => sum + count(seconds), 0))
  let at = 0
  for (const { seconds, level, hz = 1000 } of parts) {
    const amplitude = 10 ** (level / 20)
    for (let i = 0; i < count(seconds); i++)
      all[at + i] = amplitude * Math.sin((2 * Math.PI * hz * (at + i)) / rate)
    at += count(seconds)
  }
  return all
}

/** A measured track, in pieces of odd sizes. */
const measured = (channels: readonly Float32Array[], rate = RATE): SoundFacts => {
  const meter = createSoundMeter(rate, channels.length)
  const length = channels[0]?.length ?? 0
  for (let at = 0, piece = 1000; at < length; at += piece, piece = (piece * 7919) % 30_011)
    meter.push(channels.map((each) => each.subarray(at, at + piece)))
  return meter.finish()
}

const stereo = (parts: readonly Part[], rate = RATE): SoundFacts => {
  const sine = sines(parts, rate)
  return measured([sine, sine], rate)
}

describe('K-weighting', () => {
  it('has the coefficients that ITU-R BS.1770-4, Annex 1, tables 1 and 2 print for 48 kHz', () => {
    const [shelf, highPass] = kWeightingAt(RATE)
    const printed = [
      [shelf.b0, 1.53512485958697],
      [shelf.b1, -2.69169618940638],
      [shelf.b2, 1.19839281085285],
      [shelf.a1, -1.69065929318241],
      [shelf.a2, 0.73248077421585],
      [highPass.a1, -1.99004745483398],
      [highPass.a2, 0.99007225036621],
    ] as const
    for (const [ours, theirs] of printed) expect(ours).toBeCloseTo(theirs, 11)
    expect([highPass.b0, highPass.b1, highPass.b2]).toEqual([1, -2, 1])
  })

  it('reads a full-scale sine of 997 Hz in one channel as −3.01 LKFS (BS.1770-4, Annex 1)', () => {
    const sine = sines([{ seconds: 5, level: 0, hz: 997 }])
    const silent = new Float32Array(sine.length)
    expect(measured([sine, silent]).integrated).toBeCloseTo(-3.01, 2)
  })

  it.each([44_100, 32_000, 96_000])('weighs alike at %i samples a second', (rate) => {
    // Above 10 kHz the shelf is bent by the lower rates; speech and tones are below.
    for (const hz of [60, 440, 997, 4000]) {
      const at = (samples: number) => stereo([{ seconds: 2, level: -20, hz }], samples).integrated
      expect(Math.abs(at(rate) - at(RATE))).toBeLessThan(0.06)
    }
  })
})

describe('EBU Tech 3341 (2016), table 1: minimum requirements test signals, by formula', () => {
  const part = (seconds: number, level: number) => ({ seconds, level })

  it('1 and 2: a steady stereo sine reads its level in M, S and I', () => {
    for (const level of [-23, -33]) {
      const { integrated, momentary, shortTerm } = stereo([part(20, level)])
      for (const value of [integrated, momentary, shortTerm])
        expect(Math.abs(value - level)).toBeLessThan(0.1)
    }
  })

  it.each([
    ['3', [part(10, -36), part(60, -23), part(10, -36)]],
    ['4', [part(10, -72), part(10, -36), part(60, -23), part(10, -36), part(10, -72)]],
    ['5', [part(20, -26), part(20.1, -20), part(20, -26)]],
  ])('%s: I is −23.0 ±0.1 LUFS, gated', (_, parts) => {
    expect(Math.abs(stereo(parts).integrated + 23)).toBeLessThan(0.1)
  })

  it('6: five channels, −28 left and right, −24 centre, −30 surround', () => {
    const [side, centre, surround] = [-28, -24, -30].map((level) => sines([part(20, level)]))
    if (!side || !centre || !surround) throw new Error('no signal')
    const silent = new Float32Array(side.length)
    const five = measured([side, side, centre, surround, surround]).integrated
    expect(Math.abs(five + 23)).toBeLessThan(0.1)
    expect(measured([side, side, centre, side, surround, surround]).integrated).toBe(five)
    expect(measured([side, side, centre, silent, surround, surround]).integrated).toBe(five)
  })

  it('9: five times 1.34 s at −20 and 1.66 s at −30 is −23 short-term', () => {
    const { shortTerm } = stereo(
      Array.from({ length: 5 }, () => [part(1.34, -20), part(1.66, -30)]).flat(),
    )
    expect(Math.abs(shortTerm + 23)).toBeLessThan(0.1)
  })

  it.each([
    ['15', 4, 0, 0.5, -6],
    ['16', 4, 45, 0.5, -6],
    ['17', 6, 60, 0.5, -6],
    ['18', 8, 67.5, 0.5, -6],
    ['19', 4, 45, 1.41, 3],
  ] as const)(
    '%s: a sine of fs/%i from %f° reads its true peak +0.2 −0.4 dB',
    (_, parts, degrees, amplitude, peak) => {
      const phase = (degrees * Math.PI) / 180
      // Faded in and out over 20 ms: where a sine begins abruptly its true peak is higher.
      const fade = (i: number) => Math.sin((Math.PI / 2) * Math.min(1, i / 960)) ** 2
      const sine = Float32Array.from(
        { length: RATE },
        (__, i) =>
          fade(i) * fade(RATE - 1 - i) * amplitude * Math.sin((2 * Math.PI * i) / parts + phase),
      )
      const { truePeak, samplePeak } = measured([sine, sine])
      expect(truePeak).toBeGreaterThan(peak - 0.4)
      expect(truePeak).toBeLessThan(peak + 0.2)
      expect(samplePeak).toBeLessThanOrEqual(truePeak)
    },
  )
})

describe('EBU Tech 3342 (2016), table 1: loudness range', () => {
  it.each([
    [[-20, -30], 10],
    [[-20, -15], 5],
    [[-40, -20], 20],
    [[-50, -35, -20, -35, -50], 15],
  ])('20 s each of %j is %i LU ±1', (levels, range) => {
    const found = stereo(levels.map((level) => ({ seconds: 20, level })))
    expect(Math.abs(found.range - range)).toBeLessThan(1)
  })
})

it('finds the first steady tone, with its level and frequency', () => {
  const noise = Float32Array.from({ length: 2 * RATE }, (_, i) => 0.2 * Math.sin(i * i * 0.001))
  const tone = sines([{ seconds: 3, level: -18 }])
  const all = Float32Array.from([...noise, ...tone, ...noise])
  const found = measured([all]).tone
  expect(found?.at).toBeCloseTo(2, 1)
  expect(found?.seconds).toBeGreaterThan(2.8)
  expect(found?.hz).toBeCloseTo(1000, -1)
  expect(found?.level).toBeCloseTo(-18, 1)
  expect(measured([noise]).tone).toBeUndefined()
})

it('is silence where nothing is heard, and draws the highest of every 5 ms', () => {
  const silent = measured([new Float32Array(RATE)])
  expect([silent.integrated, silent.momentary]).toEqual([
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ])
  const click = new Float32Array(RATE + 100)
  click[24_010] = -0.5
  const { envelope, seconds } = measured([click])
  expect(seconds).toBeCloseTo(1.002, 3)
  expect([...envelope].findIndex((value) => value > 0.4)).toBe(100)
  expect(Math.max(...envelope)).toBe(0.5)
})
