import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Grade, IDENTITY_GRADE } from '../../../../src/core/colour/grade.ts'
import { PRINT_BASE } from '../../../../src/core/film/filmBase.ts'
import type { Decision, DecisionList } from '../../../../src/core/formats/decisionList.ts'
import { lossesOtio } from '../../../../src/core/formats/otio/lossesOtio.ts'
import { readOtio } from '../../../../src/core/formats/otio/readOtio.ts'
import { writeOtio } from '../../../../src/core/formats/otio/writeOtio.ts'
import { checkGrade } from '../../../../src/core/job/checkGrade.ts'
import type { Cue, HeldFrame, Job } from '../../../../src/core/job/job.ts'
import type { HeldId } from '../../../../src/core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../../../../src/core/picture/framing.ts'
import { frame } from '../../../../src/core/time/frame.ts'
import { rate } from '../../../../src/core/time/rate.ts'
import { says } from '../../../support/lossWords.ts'
import {
  clip,
  gap,
  range,
  stack,
  time,
  timeline,
  track,
  transition,
} from '../../../support/otioText.ts'
import { answerOf } from '../../../support/sampleAnswer.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../../support/sampleJob.ts'

const textOf = (job: Job): string => {
  const written = writeOtio(job, REEL_ID)
  if (!written.ok) throw new Error(written.problems[0].says)
  expect(written.value.files).toHaveLength(1)
  return written.value.files[0]?.text ?? ''
}

const listOf = (text: string): DecisionList => {
  const read = readOtio(text, { rate: rate(25), isDropFrame: false })
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

/** A job as an import makes it: cues where decisions begin, with what was said of each. */
const placed = (list: DecisionList, length = 100): Job => {
  const cueOf = (cue: Cue, decision: Decision | undefined): Cue => ({
    ...cue,
    ...decision?.values,
    foreign: decision?.foreign ?? [],
  })
  const firsts = list.decisions.map((_, index) => index * length)
  const frames = firsts.length * length
  const reel = sampleReel({ frames, foreign: list.foreign, rate: list.rate ?? rate(25) })
  return sampleJob(firsts, (cue, index) => cueOf(cue, list.decisions[index]), reel)
}

const GRADE: Grade = {
  lift: [0.01, 0, -0.02],
  gamma: [1.14, 1, 0.9],
  gain: [1.1, 1, 0.95],
  saturation: 1.06,
}

/** The fields of each schema: facts/otio-clf.md §1, from serialized-schema-only-fields.md. */
const FIELDS: Readonly<Record<string, string>> = {
  'Timeline.1': 'name global_start_time tracks metadata',
  'Stack.1': 'name children source_range effects markers enabled metadata',
  'Track.1': 'name children source_range effects markers enabled metadata kind',
  'Clip.2':
    'name source_range media_references active_media_reference_key effects markers enabled metadata',
  'ExternalReference.1': 'name target_url available_range available_image_bounds metadata',
  'Marker.2': 'name color marked_range comment metadata',
  'RationalTime.1': 'rate value',
  'TimeRange.1': 'start_time duration',
}

const HELD: HeldFrame = {
  id: 'held-1' as HeldId,
  reel: REEL_ID,
  frame: frame(120),
  name: 'Skin',
  grade: GRADE,
  framing: IDENTITY_FRAMING,
}

const full: Job = {
  ...sampleJob(undefined, (cue, i) => ({
    ...cue,
    grade: i === 0 ? cue.grade : GRADE,
    ramp: i === 2 ? 12 : 0,
    rampShape: i === 2 ? 'eased' : 'linear',
    framing: i === 1 ? { ...IDENTITY_FRAMING, zoom: 1.25 } : cue.framing,
    scene: i === 1 ? '12A' : '',
    note: i === 1 ? 'Hände zu rot\n“mehr Grün”' : '',
    gradeName: i === 3 ? 'warm' : '',
    alternates: i === 3 ? [{ name: 'cold', grade: IDENTITY_GRADE }] : [],
    answers: i === 1 ? [answerOf(cue)] : [],
  })),
  held: { [HELD.id]: HELD },
}

describe('a reel as an OpenTimelineIO timeline', () => {
  it('has just the fields that each schema has, all of them', () => {
    const seen = new Set<string>()
    const look = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return
      if ('OTIO_SCHEMA' in value) {
        const { OTIO_SCHEMA: schema, ...rest } = value
        seen.add(String(schema))
        expect(Object.keys(rest).sort()).toEqual(FIELDS[String(schema)]?.split(' ').sort())
      }
      for (const [name, inside] of Object.entries(value)) if (name !== 'metadata') look(inside)
    }
    look(JSON.parse(textOf(full)))
    expect([...seen].sort()).toEqual(Object.keys(FIELDS).sort())
  })

  it('begins at the reel’s timecode, one clip a cue on the scan', () => {
    const { global_start_time, tracks, name } = JSON.parse(textOf(full))
    expect(name).toBe('Orlop')
    expect(global_start_time).toEqual(time(900_000))
    expect(tracks.children).toHaveLength(1)
    const clips = tracks.children[0].children
    expect(clips.map((each: { source_range: unknown }) => each.source_range)).toEqual([
      range(900_000, 100),
      range(900_100, 150),
      range(900_250, 150),
      range(900_400, 600),
    ])
    expect(clips[1].media_references[clips[1].active_media_reference_key]).toMatchObject({
      OTIO_SCHEMA: 'ExternalReference.1',
      name: 'Orlop reel 1',
      target_url: 'orlop-1.mov',
      available_range: range(900_000, 1000),
    })
  })

  it('has grades as ASC CDL, and all else of a cue and its reel in a namespace of its own', () => {
    const { tracks, metadata } = JSON.parse(textOf(full))
    const [, second] = tracks.children[0].children
    // slope = gain − lift, offset = lift, power = 1/gamma.
    expect(second.metadata.cdl).toEqual({
      asc_sop: {
        slope: [1.1 - 0.01, 1, 0.95 + 0.02],
        offset: [0.01, 0, -0.02],
        power: [1 / 1.14, 1, 1 / 0.9],
      },
      asc_sat: 1.06,
    })
    expect(second.metadata.reelwright).toMatchObject({
      version: 1,
      cue: 'cue-2',
      grade: GRADE,
      scene: '12A',
      boundary: { kind: 'cut', confidence: 1 },
      agreement: 'changed',
      answers: [{ says: 'agreed', by: 'Ines' }],
    })
    const { foreign: _, ...reel } = sampleReel()
    expect(metadata.reelwright).toMatchObject({
      version: 1,
      reel,
      tolerance: { id: 'ebu-r103-v3', name: 'EBU R 103 v3' },
    })
  })

  it('has notes and held frames as markers', () => {
    const clips = JSON.parse(textOf(full)).tracks.children[0].children
    expect(clips.map((each: { markers: unknown[] }) => each.markers.length)).toEqual([0, 2, 0, 0])
    const [note, held] = clips[1].markers
    expect(note).toMatchObject({ name: 'Note', comment: 'Hände zu rot\n“mehr Grün”' })
    expect(held).toMatchObject({ name: 'Skin', marked_range: range(900_120, 1) })
    expect(held.metadata.reelwright).toMatchObject({ held: 'held-1', grade: GRADE })
  })

  it('comes back with nothing told and nothing kept as words of others', () => {
    const list = listOf(textOf(full))
    expect(list.notTaken).toEqual([])
    expect(list.foreign).toEqual([])
    expect(list.decisions.map(({ foreign }) => foreign)).toEqual([[], [], [], []])
    expect(list.decisions.map(({ recordSpan }) => recordSpan?.from)).toEqual([
      900_000, 900_100, 900_250, 900_400,
    ])
    expect(list.decisions.map(({ source }) => source)).toEqual(Array(4).fill('orlop-1.mov'))
  })

  it('brings every value of a cue back to the last bit', () => {
    const number = fc.double({ min: -0.5, max: 2, noNaN: true })
    const triple = fc.tuple(number, number, number)
    const above = fc.double({ min: 0.01, max: 8, noNaN: true })
    const grade = fc
      .record({
        lift: triple,
        gamma: fc.tuple(above, above, above),
        gain: triple,
        saturation: above,
      })
      .filter((each) => checkGrade(each).ok)
    const framing = fc.record({
      zoom: fc.double({ min: 0.25, max: 8, noNaN: true }),
      pan: fc.double({ min: -1, max: 1, noNaN: true }),
      tilt: fc.double({ min: -1, max: 1, noNaN: true }),
      rotation: fc.double({ min: -180, max: 180, noNaN: true }),
      squeeze: fc.double({ min: 0.25, max: 4, noNaN: true }),
      blanking: fc.double({ min: -0.95, max: 0.95, noNaN: true }),
    })
    const name = fc.string({ maxLength: 20, unit: 'binary' })
    const values = fc.record({
      grade,
      gradeName: name,
      alternates: fc.array(fc.record({ name, grade }), { maxLength: 3 }),
      framing,
      ramp: fc.integer({ min: 0, max: 99 }),
      rampShape: fc.constantFrom('linear' as const, 'eased' as const),
      boundary: fc.record({
        kind: fc.constantFrom('cut' as const, 'dip' as const, 'fade-out' as const),
        confidence: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      scene: name,
      note: name,
    })
    const rates = fc.constantFrom(rate(25), rate(24), rate(30_000, 1001), rate(24_000, 1001))
    fc.assert(
      fc.property(
        fc.array(values, { minLength: 1, maxLength: 5 }),
        rates,
        fc.string({ unit: 'binary', minLength: 1, maxLength: 12 }),
        (all, reelRate, reelName) => {
          const reel = sampleReel({ rate: reelRate, name: reelName })
          const firsts = all.map((_, index) => index * 40)
          const job = sampleJob(firsts, (cue, i) => ({ ...cue, ...all[i] }), reel)
          const list = listOf(textOf(job))
          expect(list.decisions.map((each) => each.values)).toEqual(all)
          expect(list.rate).toEqual(reelRate)
          expect(list.decisions.map(({ recordSpan }) => recordSpan?.from)).toEqual(
            firsts.map((first) => 900_000 + first),
          )
          expect(list.notTaken).toEqual([])
          expect(list.foreign).toEqual([])
        },
      ),
      { seed: 1, numRuns: 150 },
    )
  })
})

describe('a list that came from OpenTimelineIO', () => {
  /** Puts a member that nobody knows into every record, each with a name and value of its own. */
  const planted = (document: unknown): readonly [text: string, plants: readonly string[]] => {
    const odd = ['9223372036854775807', 'NaN', '-Infinity', '-0', '1.0', '1E+2', '"\\ud83c"']
    const plants: string[] = []
    const text = JSON.stringify(document).replaceAll(/\{(?="OTIO_SCHEMA")|\{(?="kept")/gu, () => {
      const plant = `"planted ${plants.length}":${odd[plants.length % odd.length]}`
      plants.push(plant)
      return `{${plant},`
    })
    return [text, plants]
  }

  const media = (url: string) => ({
    OTIO_SCHEMA: 'ExternalReference.1',
    target_url: url,
    available_range: range(0, 500),
    metadata: { kept: 1 },
  })
  const marker = (version: number) => ({ OTIO_SCHEMA: `Marker.${version}`, name: `m${version}` })
  const rich = timeline(
    [
      track([clip('other', 0, 5)], { kind: 'Audio' }),
      track(
        [
          gap(3),
          clip('a', 10, 50, {
            media_references: { DEFAULT_MEDIA: media('a.mov'), proxy: media('p.mov') },
            active_media_reference_key: 'proxy',
            effects: [{ OTIO_SCHEMA: 'LinearTimeWarp.1', time_scalar: 1 }],
            markers: [marker(1), marker(2), marker(3)],
            metadata: {
              theirs: { kept: 1 },
              cdl: {
                kept: 1,
                asc_sop: { kept: 1, slope: [1, 1, 1], offset: [0, 0, 0], power: [1, 1, 1] },
              },
            },
          }),
          transition(5, 5),
          { OTIO_SCHEMA: 'Caption.9', inside: { OTIO_SCHEMA: 'Deep.1' } },
          clip('b', 10, 50, { OTIO_SCHEMA: 'Clip.1', media_reference: media('b.mov') }),
          transition(500, 500),
          stack([
            track([clip('c', 0, 20)], { source_range: range(0, 20) }),
            track([clip('x', 0, 5)]),
          ]),
          clip('d', 0, 20, { enabled: false }),
          { OTIO_SCHEMA: 'Card.1', source_range: range(0, 5) },
        ],
        { source_range: range(0, 145), markers: [marker(2)], metadata: { kept: 1 } },
      ),
      track([clip('over', 0, 5)]),
    ],
    { global_start_time: time(100), metadata: { theirs: { kept: 1 }, reelwright: { kept: 1 } } },
  )

  it('goes out with everything in it that a job has no field for, as it was spelt', () => {
    const [text, plants] = planted(rich)
    expect(plants.length).toBeGreaterThan(80)
    const list = listOf(text)
    expect(list.decisions.map(({ name }) => name)).toEqual(['a', 'b', 'c', 'd'])
    const written = textOf(placed(list))
    const found = plants.filter((plant) => written.includes(plant.replace('":', '": ')))
    expect(found).toEqual(plants)
    expect(written.match(/"planted \d+"/gu)).toHaveLength(plants.length)
  })

  it('goes out the same again after it was read again', () => {
    const [text] = planted(rich)
    const once = textOf(placed(listOf(text)))
    const twice = textOf(placed(listOf(once)))
    expect(twice).toBe(once)
  })

  it('has only the cues’ own fields written anew', () => {
    const list = listOf(JSON.stringify(rich))
    const job = placed(list)
    const { tracks, global_start_time, name, metadata } = JSON.parse(textOf(job))
    expect(name).toBe('T')
    expect(global_start_time).toEqual(time(900_000))
    expect(metadata.theirs).toEqual({ kept: 1 })
    expect(metadata.reelwright).toMatchObject({
      kept: 1,
      replaced: { global_start_time: time(100) },
      reel: { id: REEL_ID },
    })
    expect(tracks.children).toHaveLength(3)
    const [, ours] = tracks.children
    expect(ours.source_range).toBeNull()
    expect(ours.metadata).toEqual({
      kept: 1,
      reelwright: { replaced: { source_range: range(0, 145) } },
    })
    expect(
      ours.children.map(
        (each: { OTIO_SCHEMA: string; name?: string }) => each.name ?? each.OTIO_SCHEMA,
      ),
    ).toEqual(['a', 'Transition.1', 'Caption.9', 'b', 'c', 'd'])
    const [a, , , b, c, d] = ours.children
    expect(a.source_range).toEqual(range(900_000, 100))
    expect(Object.keys(a.media_references)).toEqual(['DEFAULT_MEDIA', 'proxy', 'reelwright'])
    expect(a.active_media_reference_key).toBe('reelwright')
    expect(a.metadata.reelwright.replaced).toEqual({
      source_range: range(10, 50),
      active_media_reference_key: 'proxy',
    })
    expect(a.metadata.reelwright.before).toEqual([gap(3)])
    expect(a.markers).toHaveLength(3)
    expect(b.OTIO_SCHEMA).toBe('Clip.2')
    expect(b).not.toHaveProperty('media_reference')
    expect(b.media_references.DEFAULT_MEDIA).toEqual(media('b.mov'))
    expect(
      c.metadata.reelwright.before.map((each: { OTIO_SCHEMA: string }) => each.OTIO_SCHEMA),
    ).toEqual(['Transition.1', 'Stack.1', 'Track.1'])
    expect(d.enabled).toBe(false)
    expect(d.metadata.reelwright.after).toEqual([
      { OTIO_SCHEMA: 'Card.1', source_range: range(0, 5) },
    ])
  })

  it.each([
    ['a stack', stack([track([clip('a', 0, 9)]), track([clip('b', 0, 9)])])],
    ['a track', track([clip('a', 0, 9)])],
    ['a clip', clip('a', 0, 9)],
    [
      'a collection',
      {
        OTIO_SCHEMA: 'SerializableCollection.1',
        children: [{ OTIO_SCHEMA: 'Odd.1' }, timeline([track([clip('a', 0, 9)])]), clip('z', 0, 1)],
      },
    ],
    [
      'a collection of clips',
      { OTIO_SCHEMA: 'SerializableCollection.1', children: [clip('a', 0, 9)] },
    ],
    ['a stack with a clip beside a track', stack([clip('a', 0, 9), track([clip('b', 0, 9)])])],
  ])('goes out as a timeline where it was %s, with all that was there', (_, document) => {
    const [text, plants] = planted(document)
    const list = listOf(text)
    const written = textOf(placed(list))
    expect(written).toContain('"Timeline.1"')
    expect(plants.filter((plant) => !written.includes(plant.replace('":', '": ')))).toEqual([])
    const again = listOf(written)
    expect(again.decisions.map(({ name, recordSpan }) => [name, recordSpan])).toEqual([
      ['a', { from: 900_000, to: 900_100 }],
    ])
  })

  it.each(['simple_cut', 'transition', 'clip_example', 'multitrack', 'screening_example'])(
    'goes out and comes back with its names and markers: %s',
    (name) => {
      const file = resolve(import.meta.dirname, `../../../media/interchange/otio/${name}.otio`)
      const list = listOf(readFileSync(file, 'utf8'))
      const written = textOf(placed(list))
      const again = listOf(written)
      expect(again.title).toBe(list.title)
      expect(again.decisions.map((each) => each.name)).toEqual(
        list.decisions.map((each) => each.name),
      )
      expect(again.decisions.map((each) => each.transition)).toEqual(
        list.decisions.map((each) => each.transition),
      )
      expect(textOf(placed(again))).toBe(written)
    },
  )

  it('is written without what is kept where that does not read, which is told', () => {
    const broken = [{ format: 'otio', text: '{"OTIO_SCHEMA": "Clip.2"' }] as const
    const reel = sampleReel({ foreign: [{ format: 'otio', text: '[]' }] })
    const job = sampleJob([0, 100], (cue, i) => ({ ...cue, foreign: i === 1 ? broken : [] }), reel)
    expect(listOf(textOf(job)).decisions).toHaveLength(2)
    expect(
      lossesOtio(job, REEL_ID).filter(({ subject }) => subject === 'Words of other lists'),
    ).toHaveLength(2)
  })
})

describe('the losses of OpenTimelineIO', () => {
  it('say which texts hold half a character, written so that a strict reader takes the file', () => {
    const job = sampleJob([0, 50], (cue, i) => ({ ...cue, note: i === 1 ? 'a\ud83c' : '' }))
    expect(textOf(job)).not.toMatch(/\\ud83c/iu)
    expect(listOf(textOf(job)).decisions[1]?.values.note).toBe('a\ufffd')
    expect(says(lossesOtio(job, REEL_ID))).toContain('in the texts of cue 2,')
  })

  it('say what other programs do not apply, cue by cue', () => {
    const job = {
      ...full,
      reels: { [REEL_ID]: sampleReel({ base: { ...PRINT_BASE, scan: 'negative' } }) },
    }
    const words = says(lossesOtio(job, REEL_ID))
    for (const part of [
      'do not apply the base',
      'the framing of cue 2',
      'the ramp of cue 3',
      'the grade in force of cue 4',
      'the scene mark of cue 2',
      'The agreement on cue 2',
      'The held frame goes out as markers',
      'the tolerance the job is held to',
    ])
      expect(words).toContain(part)
    expect(words).not.toContain('drop frames')
  })

  it('say what lists of other formats said', () => {
    const foreign = [{ format: 'edl', text: '{}' }] as const
    const reel = sampleReel({ rate: rate(30_000, 1001), isDropFrame: true, foreign })
    const words = says(
      lossesOtio(
        sampleJob([0, 50], (cue) => ({ ...cue, foreign }), reel),
        REEL_ID,
      ),
    )
    expect(words).toContain('said of cues 1 and 2')
    expect(words).toContain('said as a whole')
    expect(words).toContain('labels of timecode drop frames')
  })
})
