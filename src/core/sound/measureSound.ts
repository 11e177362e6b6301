import { findTone, type Slice, type Tone } from './findTone.ts'
import { integratedLoudness, loudnessOf, loudnessRange } from './gating.ts'
import { runKWeighting } from './kWeighting.ts'
import { runTruePeak } from './truePeak.ts'

/** What a sound track measures, by ITU-R BS.1770-4 and EBU R 128. */
export type SoundFacts = {
  readonly seconds: number
  readonly rate: number
  readonly channels: number
  /** LUFS; −∞ for silence. */
  readonly integrated: number
  /** LU, EBU Tech 3342. */
  readonly range: number
  /** The loudest 400 ms and 3 s, LUFS. */
  readonly momentary: number
  readonly shortTerm: number
  /** dBTP, between samples too; and dBFS of the samples themselves. */
  readonly truePeak: number
  readonly samplePeak: number
  /** The first steady tone, as it is on a track for alignment. */
  readonly tone: Tone | undefined
  /** The highest of every 5 ms of all channels, 0 to 1, for drawing. */
  readonly envelope: Float32Array<ArrayBuffer>
}

/** Takes a track as it comes, channel by channel of the same length. */
export type SoundMeter = {
  readonly push: (channels: readonly Float32Array[]) => void
  readonly finish: () => SoundFacts
}

const SLICES_A_SECOND = 10
const ENVELOPE_A_SECOND = 200

/** Slices in a momentary block (400 ms) and a short-term one (3 s). */
const MOMENTARY = 4
const SHORT_TERM = 30

/**
 * Weights of channels (BS.1770-4, Annex 1, table 3): 1, surround 1.41 (+1.5 dB), low frequency
 * effects none. Five are left, right, centre and surrounds; six have effects before the surrounds.
 */
const weightOf = (channel: number, of: number): number => {
  if (of === 6 && channel === 3) return 0
  return of >= 5 && channel >= of - 2 ? 1.41 : 1
}

const decibels = (value: number): number => 20 * Math.log10(value)

/** Means of so many slices in a row, one from each slice on. */
const runningMeans = (powers: readonly number[], count: number): readonly number[] => {
  const means: number[] = []
  let sum = 0
  for (const [i, power] of powers.entries()) {
    sum += power - (i >= count ? (powers[i - count] ?? 0) : 0)
    if (i >= count - 1) means.push(Math.max(0, sum) / count)
  }
  return means
}

/** One channel: what is kept of it while it goes by. */
const runChannel = (rate: number) => {
  const weigh = runKWeighting(rate)
  const peak = runTruePeak()
  let before = 0
  return (samples: Float64Array) => {
    let square = 0
    let highest = 0
    let crossings = 0
    for (const sample of samples) {
      square += sample * sample
      highest = Math.max(highest, Math.abs(sample))
      if (before < 0 && sample >= 0) crossings++
      before = sample
    }
    peak.push(samples)
    weigh(samples)
    let power = 0
    for (const sample of samples) power += sample * sample
    const slice = { rms: Math.sqrt(square / samples.length), peak: highest, crossings }
    return { slice, power: power / samples.length, truePeak: peak.peak() }
  }
}

/** A meter for a track of so many samples a second and channels. */
export const createSoundMeter = (rate: number, channels: number): SoundMeter => {
  const length = Math.round(rate / SLICES_A_SECOND)
  const waiting = Array.from({ length: channels }, () => new Float64Array(length))
  const runs = waiting.map(() => runChannel(rate))
  const powers: number[] = []
  const slices: Slice[] = []
  const envelope: number[] = []
  let filled = 0
  let total = 0
  let truePeak = 0
  let samplePeak = 0

  const drawn = (count: number): void => {
    const parts = Math.round(ENVELOPE_A_SECOND / SLICES_A_SECOND)
    for (let part = 0; part < parts; part++) {
      const [from, end] = [(part * length) / parts, ((part + 1) * length) / parts].map(Math.round)
      let highest = 0
      for (const samples of waiting)
        for (let i = from ?? 0; i < Math.min(end ?? 0, count); i++)
          highest = Math.max(highest, Math.abs(samples[i] ?? 0))
      envelope.push(highest)
    }
  }
  const close = (count: number): void => {
    drawn(count)
    let power = 0
    for (const [channel, samples] of waiting.entries()) {
      const made = runs[channel]?.(samples.slice(0, count))
      if (!made) continue
      power += weightOf(channel, channels) * made.power
      truePeak = Math.max(truePeak, made.truePeak)
      samplePeak = Math.max(samplePeak, made.slice.peak)
      if (channel === 0 && count === length) slices.push(made.slice)
    }
    // A last part that is not whole belongs to no block.
    if (count === length) powers.push(power)
  }
  return {
    push: (given) => {
      const count = given[0]?.length ?? 0
      total += count
      for (let done = 0; done < count; ) {
        const taken = Math.min(count - done, length - filled)
        for (const [channel, samples] of waiting.entries())
          samples.set(given[channel]?.subarray(done, done + taken) ?? [], filled)
        filled += taken
        done += taken
        if (filled < length) break
        close(length)
        filled = 0
      }
    },
    finish: () => {
      if (filled > 0) close(filled)
      filled = 0
      const blocks = runningMeans(powers, MOMENTARY)
      const long = runningMeans(powers, SHORT_TERM)
      const loudest = (all: readonly number[]): number =>
        loudnessOf(all.reduce((most, power) => Math.max(most, power), 0))
      return {
        ...{ seconds: total / rate, rate, channels },
        ...{ integrated: integratedLoudness(blocks), range: loudnessRange(long) },
        ...{ momentary: loudest(blocks), shortTerm: loudest(long) },
        ...{ truePeak: decibels(truePeak), samplePeak: decibels(samplePeak) },
        ...{ tone: findTone(slices), envelope: Float32Array.from(envelope) },
      }
    },
  }
}
