import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import type { DecisionList } from '../../src/core/formats/decisionList.ts'
import { readOtio } from '../../src/core/formats/otio/readOtio.ts'
import { writeOtio } from '../../src/core/formats/otio/writeOtio.ts'
import { rate } from '../../src/core/time/rate.ts'
import { changedJson } from '../support/changedJson.ts'
import { type Chance, fuzzReader, textInput } from '../support/fuzzReader.ts'
import { clip, gap, range, stack, timeline, track, transition } from '../support/otioText.ts'
import { REEL_ID, sampleJob, sampleReel } from '../support/sampleJob.ts'

const FILES = resolve(import.meta.dirname, '../media/interchange/otio')

const ours = (): string => {
  const written = writeOtio(
    sampleJob([0, 100], (cue) => ({ ...cue, note: 'n', ramp: 3 })),
    REEL_ID,
  )
  return written.ok ? (written.value.files[0]?.text ?? '') : ''
}

const small = JSON.stringify(
  timeline([
    track([
      clip('a', 0, 5, { metadata: { cdl: { asc_sat: 0.9 } } }),
      transition(1, 1),
      stack([track([clip('b', 0, 5)])], { source_range: range(1, 3) }),
      gap(2),
    ]),
  ]),
  undefined,
  1,
)

/** A document of the format's own words in places where they may or may not belong. */
const madeUp = (chance: Chance): Uint8Array => {
  const schemas = ['Timeline.1', 'Stack.1', 'Track.1', 'Clip.1', 'Clip.2', 'Gap.1', 'Transition.1']
  const times = ['RationalTime.1', 'TimeRange.1', 'SerializableCollection.1', 'Odd.1', 'Clip.9', '']
  const numbers = [0, 1, 24, 25, 29.97, -5, 1e300, 0.5, 2 ** 53, 48_000]
  const pick = <T>(from: readonly T[]): T | undefined => from[chance(from.length)]
  const value = (depth: number): unknown => {
    const kind = chance(depth > 4 ? 3 : 7)
    if (kind === 0) return pick(numbers)
    if (kind === 1) return pick(['', 'Video', 'Audio', 'DEFAULT_MEDIA', 'a', null, true])
    if (kind === 2) return range(pick(numbers) ?? 0, pick(numbers) ?? 0, pick(numbers) ?? 1)
    if (kind === 3) return Array.from({ length: chance(4) }, () => value(depth + 1))
    return record(depth + 1)
  }
  const record = (depth: number): unknown => {
    const schema = pick([...schemas, ...times])
    const fields: Record<string, unknown> = { OTIO_SCHEMA: schema }
    if (chance(3) > 0) fields.children = Array.from({ length: chance(4) }, () => value(depth + 1))
    if (chance(3) > 0 || schema === 'Timeline.1') fields.tracks = value(depth)
    if (chance(2) > 0) fields.source_range = range(chance(9), chance(9), pick(numbers) ?? 1)
    if (chance(4) === 0) fields.source_range = value(5)
    if (chance(4) === 0) fields.kind = value(5)
    if (chance(4) === 0) fields.media_references = { DEFAULT_MEDIA: value(depth + 2) }
    if (chance(4) === 0) fields.metadata = { cdl: value(depth), reelwright: value(depth) }
    if (chance(4) === 0) fields.global_start_time = value(5)
    return fields
  }
  return new TextEncoder().encode(JSON.stringify(record(0), undefined, chance(2)))
}

const made = [small, ours()]

/** What was read goes out again, and comes back as as many decisions. */
const isWrittenAndRead = ({ decisions, foreign }: DecisionList): boolean => {
  const job = sampleJob(
    decisions.map((_, index) => index * 10),
    (cue, index) => ({
      ...cue,
      ...decisions[index]?.values,
      foreign: decisions[index]?.foreign ?? [],
    }),
    sampleReel({ frames: decisions.length * 10, foreign }),
  )
  const written = writeOtio(job, REEL_ID)
  const again = written.ok ? readOtio(written.value.files[0]?.text ?? '', undefined) : written
  return again.ok && again.value.decisions.length === decisions.length
}

it('reads or refuses whatever it is given, by line, and writes what it has read', async () => {
  const names = ['simple_cut', 'transition', 'clip_example']
  const files = names.map((name) => readFileSync(`${FILES}/${name}.otio`, 'utf8'))
  const counts = await fuzzReader({
    seeds: textInput.seedsOf([...files, ...made]),
    makeUp: (chance) =>
      chance(3) === 0 ? madeUp(chance) : changedJson(made[chance(made.length)] ?? '', chance),
    toInput: textInput.toInput,
    read: (text) => {
      const read = readOtio(text, { rate: rate(25), isDropFrame: false })
      if (read.ok && !isWrittenAndRead(read.value)) throw new Error('It does not come back.')
      return read
    },
    runs: 24_000,
  })
  expect(counts.read).toBeGreaterThan(1000)
  expect(counts.refused).toBeGreaterThan(10_000)
})
