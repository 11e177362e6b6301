import { describe, expect, it } from 'vitest'
import type { DecisionList } from '../../../../src/core/formats/decisionList.ts'
import { readOtio } from '../../../../src/core/formats/otio/readOtio.ts'
import { CUE_FOREIGN_LIMIT } from '../../../../src/core/job/limits.ts'
import { rate } from '../../../../src/core/time/rate.ts'
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

const PAL = { rate: rate(25), isDropFrame: false }

const listOf = (document: unknown): DecisionList => {
  const text = typeof document === 'string' ? document : JSON.stringify(document)
  const read = readOtio(text, PAL)
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

const spans = (list: DecisionList) =>
  list.decisions.map(({ name, recordSpan, sourceSpan }) => [
    name,
    recordSpan && `${recordSpan.from}-${recordSpan.to}`,
    sourceSpan && `${sourceSpan.from}-${sourceSpan.to}`,
  ])

const told = (list: DecisionList) => list.notTaken.map(({ says }) => says)

const refusal = (document: unknown) => {
  const text = typeof document === 'string' ? document : JSON.stringify(document, undefined, 1)
  const read = readOtio(text, PAL)
  if (read.ok) throw new Error('It was read.')
  const { code, at } = read.problems[0]
  return [code, text.split('\n')[(at?.line ?? 0) - 1]?.trim()]
}

const withMetadata = (metadata: unknown) => timeline([track([clip('a', 0, 10, { metadata })])])

const cdl = (slope: unknown, sat: unknown = 1) => ({
  asc_sop: { slope, offset: [0, 0, 0], power: [1, 1, 1] },
  asc_sat: sat,
})

const GRADE = { lift: [0.1, 0, 0], gamma: [1.3, 1, 1], gain: [1, 1, 0.9], saturation: 0.8 }

describe('where decisions are read from', () => {
  it.each([
    ['a stack', stack([track([clip('a', 5, 10)])])],
    ['a track', track([clip('a', 5, 10)])],
    [
      'a collection of timelines',
      {
        OTIO_SCHEMA: 'SerializableCollection.1',
        children: [timeline([track([clip('a', 5, 10)])])],
      },
    ],
    [
      'names of old',
      {
        OTIO_SCHEMA: 'SerializeableCollection.1',
        children: [{ ...track([clip('a', 5, 10)]), OTIO_SCHEMA: 'Sequence.1' }],
      },
    ],
    ['a stack with a clip and no track', stack([clip('a', 5, 10)])],
  ])('%s as well as a timeline', (_, document) => {
    expect(spans(listOf(document))).toEqual([['a', '0-10', '5-15']])
  })

  it.each([
    ['a bare clip', clip('a', 5, 10)],
    [
      'a collection of clips',
      { OTIO_SCHEMA: 'SerializableCollection.1', children: [clip('a', 5, 10)] },
    ],
  ])('%s, which has no place in a programme', (_, document) => {
    expect(spans(listOf(document))).toEqual([['a', undefined, '5-15']])
  })

  it('the first timeline of a collection, and the others are told', () => {
    const other = { ...timeline([track([clip('b', 0, 10)])]), name: 'U' }
    const first = timeline([track([clip('a', 0, 10)])])
    const list = listOf({ OTIO_SCHEMA: 'SerializableCollection.1', children: [first, other] })
    expect(list.title).toBe('T')
    expect(told(list)).toEqual([
      'The timeline “U” of this collection is not taken: “T” makes the list. To take it, give it a file of its own.',
    ])
  })

  it('the first layer of pictures that is on and has clips; sound and others are told', () => {
    const list = listOf(
      timeline([
        track([gap(10)]),
        track([clip('off', 0, 10)], { enabled: false }),
        track([clip('sound', 0, 10)], { kind: 'Audio', name: 'A' }),
        track([clip('a', 0, 10)]),
        track([clip('b', 0, 10), clip('c', 0, 1)]),
      ]),
    )
    expect(spans(list).map(([name]) => name)).toEqual(['a'])
    expect(told(list).map((each) => each.slice(0, 34))).toEqual([
      'Layer 2 “V” with 1 clip is not tak',
      'Audio layer 3 “A” with 1 clip is n',
      'Layer 5 “V” with 2 clips is not ta',
    ])
  })

  it('a layer that is off where there is no other, and clips that are off, which is told', () => {
    const list = listOf(
      timeline([track([clip('a', 0, 10, { enabled: false })], { enabled: false })]),
    )
    expect(spans(list)).toEqual([['a', '0-10', '0-10']])
    expect(told(list)).toEqual([
      'The layer is switched off in the list, and is taken all the same.',
      'The clip “a” is switched off in the list, and is taken all the same.',
    ])
  })
})

describe('places', () => {
  it('begin at the start of the list and count what lies before, gaps too', () => {
    const items = [clip('a', 0, 10), gap(5), transition(1, 2), clip('b', 100, 20)]
    const list = listOf(timeline([track(items)], { global_start_time: time(900_000) }))
    expect(spans(list)).toEqual([
      ['a', '900000-900010', '0-10'],
      ['b', '900014-900035', '99-120'],
    ])
    expect(list.decisions[1]?.transition).toEqual({ kind: 'dissolve', frames: 3 })
  })

  it.each([
    ['SMPTE_Dissolve', 'dissolve'],
    ['SMPTE_Wipe', 'wipe'],
    ['Custom_Transition', 'other'],
  ])('have the transition %s for one of kind %s', (type, kind) => {
    const list = listOf(
      timeline([track([clip('a', 0, 9), transition(2, 2, type), clip('b', 0, 9)])]),
    )
    expect(list.decisions[1]?.transition).toEqual({ kind, frames: 4 })
  })

  it('are shifted and cut by the range of the track, and what is outside is told and kept', () => {
    const items = [clip('a', 0, 10), clip('b', 100, 10), clip('c', 200, 10), clip('d', 300, 10)]
    const list = listOf(timeline([track(items, { source_range: range(13, 12) })]))
    expect(spans(list)).toEqual([
      ['b', '0-7', '103-110'],
      ['c', '7-12', '200-205'],
    ])
    expect(told(list)).toEqual([
      'The clip “a” is outside the range of the track it is in, and is not taken.',
      'The clip “d” is outside the range of the track it is in, and is not taken.',
    ])
    expect(list.decisions[0]?.foreign[0]?.text).toContain('"name":"a"')
    expect(list.decisions[1]?.foreign[0]?.text).toContain('"name":"d"')
  })

  it('inside a nested stack are those of its clips, shifted and cut by it, with a note', () => {
    const inside = stack(
      [track([clip('b', 100, 10), clip('c', 200, 10)]), track([clip('x', 0, 5)])],
      {
        name: 'N',
        source_range: range(4, 12),
      },
    )
    const items = [clip('a', 0, 10), transition(2, 1), inside, clip('d', 0, 10)]
    const list = listOf(timeline([track(items)]))
    expect(spans(list)).toEqual([
      ['a', '0-8', '0-8'],
      ['b', '8-16', '102-110'],
      ['c', '16-22', '200-206'],
      ['d', '22-32', '0-10'],
    ])
    expect(list.decisions[1]?.transition).toEqual({ kind: 'dissolve', frames: 3 })
    expect(told(list)).toEqual([
      'Layer 2 “V” with 1 clip is not taken: one layer of pictures makes the list. To take it, give it a file of its own.',
      'The stack “N” stands among clips: its own clips are taken as if they stood there.',
    ])
    expect(list.decisions[1]?.foreign[0]?.text).toContain('"name":"x"')
  })

  it('after a nested stack count its longest layer', () => {
    const inside = stack([track([clip('b', 0, 10)]), track([gap(30)])])
    const list = listOf(timeline([track([inside, clip('c', 0, 10)])]))
    expect(spans(list)).toEqual([
      ['b', '0-10', '0-10'],
      ['c', '30-40', '0-10'],
    ])
  })

  it('stay at the rate of the list where that is another than the reel’s', () => {
    const item = { ...clip('a', 0, 0), source_range: range(48, 24, 24) }
    const list = listOf(timeline([track([item])], { global_start_time: time(3600, 1) }))
    expect(list.rate).toEqual(rate(24))
    expect(spans(list)).toEqual([['a', '86400-86424', '48-72']])
  })

  it('are brought to the rate of the list where that is exact, and else left out and told', () => {
    const items = [
      clip('a', 0, 10),
      { ...clip('b', 0, 0), source_range: range(60, 30, 30) },
      { ...clip('c', 0, 0), source_range: range(1, 24, 24) },
      { ...clip('d', 0, 0), source_range: range(0, 1, 24) },
      { ...clip('e', 0, 0), source_range: range(0, 23, 24) },
      clip('f', 0, 10),
    ]
    const list = listOf(timeline([track(items)]))
    expect(spans(list)).toEqual([
      ['a', '0-10', '0-10'],
      ['b', '10-35', '50-75'],
      ['c', '35-60', undefined],
      ['d', undefined, undefined],
      ['e', undefined, undefined],
      ['f', '85-95', '0-10'],
    ])
    expect(told(list)).toEqual([
      'The clip “c” begins or ends between two frames on its source; its place there is not taken.',
      'The clip “d” begins or ends between two frames on its source; its place there is not taken.',
      'The clip “d” begins or ends between two frames of the list’s rate; its place in the programme is not taken.',
      'The clip “e” begins or ends between two frames on its source; its place there is not taken.',
      'The clip “e” begins or ends between two frames of the list’s rate; its place in the programme is not taken.',
    ])
  })

  it('in seconds or samples are brought to the rate of the reel', () => {
    const items = [
      { ...clip('a', 0, 0), source_range: range(0, 48_000, 48_000) },
      { ...clip('b', 0, 0), source_range: range(96_000, 1920, 48_000) },
    ]
    const list = listOf(timeline([track(items)]))
    expect(list.rate).toEqual(rate(25))
    expect(spans(list)).toEqual([
      ['a', '0-25', '0-25'],
      ['b', '25-26', '50-51'],
    ])
    const alone = readOtio(JSON.stringify(timeline([track(items)])), undefined)
    expect(alone.ok && alone.value.rate).toEqual(rate(48_000))
  })

  it.each([29.97, 29.97002997002997, 30_000 / 1001])('know %d for 30000/1001', (fps) => {
    const item = { ...clip('a', 0, 0), source_range: range(7, 10, fps) }
    const list = listOf(timeline([track([item])], { global_start_time: time(30, 30_000 / 1001) }))
    expect(list.rate).toEqual(rate(30_000, 1001))
    expect(spans(list)).toEqual([['a', '30-40', '7-17']])
  })

  it('are not told after a clip that does not say how long it is', () => {
    const items = [clip('a', 0, 10), { OTIO_SCHEMA: 'Clip.1', name: 'b' }, clip('c', 0, 10)]
    const list = listOf(timeline([track(items)]))
    expect(spans(list)).toEqual([
      ['a', '0-10', '0-10'],
      ['b', undefined, undefined],
      ['c', undefined, '0-10'],
    ])
    expect(told(list)).toEqual([
      'The clip “b” does not say how long it is: where it ends and what follows cannot be told.',
    ])
  })

  it('count what is not known here by its range, or for nothing', () => {
    const odd = { OTIO_SCHEMA: 'Caption.7', name: 'o' }
    const items = [odd, { ...odd, source_range: range(0, 5) }, clip('a', 0, 10)]
    const list = listOf(timeline([track(items)]))
    expect(spans(list)).toEqual([['a', '5-15', '0-10']])
    expect(told(list)).toEqual([
      'The caption “o” is not known here, and is only kept; it is taken to last no time.',
      'The caption “o” is not known here, and is only kept.',
    ])
  })
})

describe('sources', () => {
  const external = (url: string) => ({
    OTIO_SCHEMA: 'ExternalReference.1',
    target_url: url,
    name: 'n',
  })
  it.each([
    [{ media_references: { DEFAULT_MEDIA: external('file:///a/b%20c.mov?x=1') } }, 'b c.mov'],
    [
      {
        media_references: { DEFAULT_MEDIA: external('x'), k: external('C:\\reels\\r.mov') },
        active_media_reference_key: 'k',
      },
      'r.mov',
    ],
    [{ media_reference: external('50%.mov') }, '50%.mov'],
    [{ metadata: { cmx_3600: { reel: 'R1' } } }, 'R1'],
    [{ media_reference: { OTIO_SCHEMA: 'MissingReference.1', name: 'R2' } }, 'R2'],
    [{ media_reference: null }, ''],
  ])('of %j is %s', (more, source) => {
    expect(listOf(timeline([track([clip('a', 0, 10, more)])])).decisions[0]?.source).toBe(source)
  })
})

describe('values', () => {
  const valuesOf = (metadata: unknown) => {
    const list = listOf(withMetadata(metadata))
    return { values: list.decisions[0]?.values, told: told(list) }
  }

  it('take a grade from a CDL in metadata', () => {
    // The values of the CDL sample of the event list adapter but for its power of 0.
    const metadata = {
      cdl: {
        asc_sop: { slope: [0.1, 0.2, 0.3], offset: [1.0, -0.0122, 0.0305], power: [1, 0.5, 1] },
        asc_sat: 0.9,
      },
    }
    expect(valuesOf(metadata)).toEqual({
      values: {
        grade: {
          lift: [1.0, -0.0122, 0.0305],
          gamma: [1, 2, 1],
          gain: [1.1, 0.2 - 0.0122, 0.3 + 0.0305],
          saturation: 0.9,
        },
      },
      told: [],
    })
    expect(valuesOf({ cdl: { asc_sat: 2 } }).values?.grade?.saturation).toBe(2)
    expect(valuesOf({ cdl: { asc_sop: null } })).toEqual({ values: {}, told: [] })
  })

  it.each([
    [cdl([1, 1])],
    [cdl(['1', 1, 1])],
    [cdl([-1, 1, 1])],
    [cdl([1, 1, 1], -1)],
    [cdl([1e9, 1, 1])],
    [{ asc_sop: { slope: [1, 1, 1], offset: [0, 0, 0], power: [1, 0, 1] } }],
    [{ asc_sop: 'none' }],
    ['none'],
  ])('tell of a CDL that is amiss and take no grade: %j', (bad) => {
    const read = valuesOf({ cdl: bad, reelwright: { version: 1, grade: GRADE } })
    expect(read.values).toEqual({})
    expect(read.told).toHaveLength(1)
  })

  it('take our own numbers where the CDL is still theirs, and else the CDL', () => {
    const theirs = {
      asc_sop: { slope: [1 - 0.1, 1, 0.9], offset: [0.1, 0, 0], power: [1 / 1.3, 1, 1] },
      asc_sat: 0.8,
    }
    const own = { version: 1, grade: GRADE }
    expect(valuesOf({ cdl: theirs, reelwright: own })).toEqual({
      values: { grade: GRADE },
      told: [],
    })
    expect(valuesOf({ reelwright: own })).toEqual({ values: { grade: GRADE }, told: [] })
    const edited = valuesOf({ cdl: { ...theirs, asc_sat: 0.7 }, reelwright: own })
    expect(edited.values?.grade).toMatchObject({ lift: [0.1, 0, 0], saturation: 0.7 })
    expect(edited.told).toEqual([
      'The clip “a”: its “cdl” is not the grade that this program wrote beside it; the “cdl” is taken.',
    ])
  })

  it('take each field of a cue that is as the job has it, and tell of each that is not', () => {
    const own = {
      version: 1,
      ramp: 12,
      rampShape: 'eased',
      scene: 7,
      note: 'n',
      framing: { zoom: 99 },
      alternates: [{ name: 'x', grade: { ...GRADE, gain: [-1, 1, 1] } }],
      later: 1,
    }
    const { values, told: all } = valuesOf({ reelwright: own })
    expect(values).toEqual({ ramp: 12, rampShape: 'eased', note: 'n' })
    expect(all.map((each) => /“reelwright\.\w+”/u.exec(each)?.[0])).toEqual([
      '“reelwright.alternates”',
      '“reelwright.framing”',
      '“reelwright.scene”',
    ])
  })

  it('take how a cue begins only as the job has it', () => {
    const found = { kind: 'fade-out', confidence: 0.25 }
    const { values } = valuesOf({ reelwright: { version: 1, boundary: found } })
    expect(values).toEqual({ boundary: found })
    for (const boundary of [
      { kind: 'fade', confidence: 1 },
      { kind: 'cut', confidence: 1.5 },
      { kind: 'cut' },
      { ...found, more: 1 },
      'cut',
    ]) {
      const amiss = valuesOf({ reelwright: { version: 1, boundary } })
      expect(amiss.values).toEqual({})
      expect(amiss.told).toEqual([
        'The clip “a”: “reelwright.boundary” is not as this program writes it, and is not taken.',
      ])
    }
  })

  it('take nothing of a version of ours that is not known', () => {
    const { values, told: all } = valuesOf({ reelwright: { version: 2, note: 'n' } })
    expect(values).toEqual({})
    expect(all).toEqual([
      'The clip “a”: what is in “reelwright” is not of version 1, and is not taken.',
    ])
  })
})

describe('what is kept', () => {
  it('is a clip as it is spelt, whatever is in it', () => {
    const odd =
      '{"OTIO_SCHEMA":"Clip.2","x":[NaN,-Infinity,9223372036854775807,1.0],"source_range":null}'
    const list = listOf(`{"OTIO_SCHEMA":"Track.1","children":[${odd}],"y":-0}`)
    expect(list.decisions[0]?.foreign).toEqual([{ format: 'otio', text: odd }])
    expect(list.foreign).toEqual([{ format: 'otio', text: '{"OTIO_SCHEMA":"Track.1","y":-0}' }])
  })

  it('is left out and told where it is too long for a cue', () => {
    const metadata = { long: 'x'.repeat(CUE_FOREIGN_LIMIT) }
    const list = listOf(withMetadata(metadata))
    expect(list.decisions[0]?.foreign).toEqual([])
    expect(told(list)).toEqual([
      'What else is said of the clip “a” is more than 100000 characters, and is not kept.',
    ])
  })

  it('is told by number past a thousand things', () => {
    const items = Array.from({ length: 1500 }, (_, i) => clip(`c${i}`, 0, 1, { enabled: false }))
    const all = told(listOf(timeline([track(items)])))
    expect(all).toHaveLength(1001)
    expect(all.at(-1)).toContain('500 more things')
  })
})

describe('refusals', () => {
  it.each([
    ['no JSON', '{"OTIO_SCHEMA": "Timeline.1",\n "tracks": }', 'malformed', '"tracks": }'],
    ['other JSON', '{"a": 1}', 'unknown-format', '{"a": 1}'],
    ['a list of JSON', '[1]', 'unknown-format', '[1]'],
    ['a schema that holds no clips', { OTIO_SCHEMA: 'Gap.1' }, 'unknown-format', '{'],
    [
      'a name twice',
      '{"OTIO_SCHEMA": "Timeline.1",\n"name": "",\n"name": ""}',
      'conflict',
      '"name": ""}',
    ],
    ['a later timeline', { OTIO_SCHEMA: 'Timeline.2' }, 'newer-version', '{'],
    ['no stack', { OTIO_SCHEMA: 'Timeline.1', tracks: [] }, 'missing', '"tracks": []'],
    ['no clips', timeline([track([gap(5)])]), 'missing', '{'],
    ['sound alone', track([clip('a', 0, 1)], { kind: 'Audio' }), 'missing', '{'],
    [
      'metadata that is no record',
      track([clip('a', 0, 1, { metadata: [5] })]),
      'malformed',
      '"metadata": [',
    ],
    [
      'markers that are no list',
      track([clip('a', 0, 1, { markers: {} })]),
      'malformed',
      '"markers": {}',
    ],
    ['children that are no list', track([], { children: 5 }), 'malformed', '"children": 5'],
    ['a later clip', track([{ OTIO_SCHEMA: 'Clip.3' }]), 'newer-version', '{'],
    [
      'a range that is none',
      track([clip('a', 0, 1, { source_range: 5 })]),
      'malformed',
      '"source_range": 5',
    ],
    ['a duration below 0', track([clip('a', 0, -1)]), 'malformed', '"source_range": {'],
    [
      'a rate of 0',
      track([{ ...gap(5), source_range: range(0, 5, 0) }, clip('a', 0, 1)]),
      'malformed',
      '"source_range": {',
    ],
    [
      'a start that is no time',
      timeline([track([clip('a', 0, 1)])], { global_start_time: 'x' }),
      'malformed',
      '"global_start_time": "x"',
    ],
  ])('name the line of %s', (_, document, code, line) => {
    expect(refusal(document)).toEqual([code, line])
  })

  it('of a time that is not finite names it', () => {
    const text = JSON.stringify(track([clip('a', 0, 7)])).replace('"value":7', '\n"value":NaN')
    const read = readOtio(text, undefined)
    expect(!read.ok && read.problems[0].code).toBe('malformed')
  })
})
