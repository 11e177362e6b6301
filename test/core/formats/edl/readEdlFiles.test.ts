import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { rate } from '../../../../src/core/time/rate.ts'
import { edlOf, foreignIn, notTakenOf, refusalsOf } from '../../../support/readEdlWhole.ts'

// Written by others; licences beside them in test/media/interchange.
const FOLDER = join(import.meta.dirname, '../../../media/interchange/edl')
const textOf = (name: string): string => readFileSync(join(FOLDER, name), 'utf8')

describe('edit decision lists of others', () => {
  it.each(readdirSync(FOLDER))(
    '%s is read whole, and alike with CR LF and old line ends',
    (name) => {
      const text = textOf(name).replaceAll('\r\n', '\n')
      const list = edlOf(text)
      expect(list.decisions.length).toBeGreaterThan(1)
      expect(edlOf(text.replaceAll('\n', '\r\n'))).toEqual(list)
      expect(edlOf(`\ufeff${text.replaceAll('\n', '\r')}`)).toEqual(list)
    },
  )

  it('25fps.edl is counted at 25, the lowest rate with a frame 24', () => {
    const list = edlOf(textOf('25fps.edl'))
    expect(list.title).toBe('SQ0002_A2')
    expect(list.rate).toEqual(rate(25))
    // 6 s 11 frames, 14 s 11, 17 s 22, 19 s 21 at 25 frames a second.
    expect(list.decisions.map(({ recordSpan }) => recordSpan?.to)).toEqual([161, 361, 447, 496])
    expect(list.decisions.map(({ name }) => name)).toEqual([
      'sq001_s001',
      'sq001_s002',
      'sq001_s003',
      'sq001_s004',
    ])
    // 01:00:01:24 is on line 13.
    expect(refusalsOf(textOf('25fps.edl'), { rate: rate(24), isDropFrame: false })).toEqual([
      '13: 01:00:01:24 is past the 24 frames of a second at 24; 25, 30, 50 or 60 frames a second would fit the list.',
    ])
  })

  it('cdl.edl has a power of 0, so its grades are told and not taken', () => {
    const list = edlOf(textOf('cdl.edl'))
    expect(list.decisions).toHaveLength(2)
    for (const { values } of list.decisions) expect(values).toEqual({})
    expect(notTakenOf(list)).toEqual([
      '5: The green power 0 is not above 0; ASC CDL needs more than 0.',
      '11: The green power 0 is not above 0; ASC CDL needs more than 0.',
    ])
    expect(foreignIn(list).notTaken).toEqual([
      'ASC_SOP (0.1 0.2 0.3)(1 -0.0122 0.0305)(1 0 1)',
      'ASC_SAT 0.9',
    ])
    // AX names no reel, so the file does.
    expect(list.decisions[0]?.source).toBe('ZZ100_501.LAY3.01')
    // 31 frames at 24 (OpenTimelineIO's own test of this event says so).
    expect(list.decisions[0]?.sourceSpan).toEqual({ from: 86_501, to: 86_532 })
  })

  it('cdl.edl with a power of 1 gives the grade its comments spell in two ways', () => {
    const list = edlOf(textOf('cdl.edl').replaceAll('(1.0 0.0 1.0)', '(1.0 1.0 1.0)'))
    const [first, second] = list.decisions
    // lift = offset, gain = slope + offset, gamma = 1 / power.
    expect(first?.values.grade).toEqual({
      lift: [1, -0.0122, 0.0305],
      gamma: [1, 1, 1],
      gain: [1.1, 0.1878, 0.3305],
      saturation: 0.9,
    })
    expect(second?.values.grade).toEqual(first?.values.grade)
    expect(list.notTaken).toEqual([])
  })

  it('dissolve_test.edl has one decision of each pair of lines, with both clips', () => {
    const list = edlOf(textOf('dissolve_test.edl'))
    expect(list.rate).toEqual(rate(24))
    expect(list.decisions.map(({ name }) => name)).toEqual(['clip_A', 'clip_B', 'clip_B'])
    const [, dissolve] = list.decisions
    expect(dissolve?.transition).toEqual({ kind: 'dissolve', frames: 10 })
    // An hour is 86,400 frames of 24. 01:00:08:08 = 86,400 + 8·24 + 8; 10 frames on to :18. In the
    // programme 9 frames after the hour, where clip_A's 9 frames end, and 10 frames on.
    expect(dissolve?.sourceSpan).toEqual({ from: 86_600, to: 86_610 })
    expect(dissolve?.recordSpan).toEqual({ from: 86_409, to: 86_419 })
    expect(dissolve?.line).toBe(5)
    expect(dissolve?.values).toEqual({})
    expect(foreignIn(list, 1)).toEqual({
      name: 'clip_B',
      events: [
        '002  TST V     C        01:00:04:14 01:00:04:14 01:00:00:09 01:00:00:09',
        '002  TST V     D    010 01:00:08:08 01:00:08:18 01:00:00:09 01:00:00:19',
      ],
      comments: ['OUTGOING CLIP NAME: clip_A', 'BLEND, DISSOLVE'],
    })
  })

  it('dissolve_test_2.edl begins its dissolve where 5 frames of clip_A end', () => {
    const [first, dissolve, last] = edlOf(textOf('dissolve_test_2.edl')).decisions
    // 01:00:08:04 = 86,400 + 8·24 + 4 = 86,596; the record is 5 to 15 frames after the hour.
    expect(first?.recordSpan).toEqual({ from: 86_400, to: 86_405 })
    expect(dissolve?.sourceSpan).toEqual({ from: 86_596, to: 86_606 })
    expect(dissolve?.recordSpan).toEqual({ from: 86_405, to: 86_415 })
    expect(dissolve?.transition).toEqual({ kind: 'dissolve', frames: 10 })
    expect(last?.recordSpan).toEqual({ from: 86_415, to: 86_420 })
  })

  it('dissolve_test_4.edl has two dissolves on end, each as long as its event says', () => {
    const list = edlOf(textOf('dissolve_test_4.edl'))
    expect(list.decisions.map(({ transition }) => [transition.kind, transition.frames])).toEqual([
      ['cut', 0],
      ['cut', 0],
      ['dissolve', 35],
      ['dissolve', 64],
      ['cut', 0],
      ['cut', 0],
    ])
    // Record: 01:04:15:02 = 86,400 + 255·24 + 2 = 92,522; 01:04:18:11 = 92,603; 01:04:21:23 = 92,687.
    const spans = list.decisions.map(({ recordSpan }) => recordSpan)
    expect(spans[2]).toEqual({ from: 92_522, to: 92_603 })
    expect(spans[3]).toEqual({ from: 92_603, to: 92_687 })
    // Source: 01:00:06:22 = 86,400 + 6·24 + 22 = 86,566 to 01:00:10:07 = 86,647: 81 frames too.
    expect(list.decisions[2]?.sourceSpan).toEqual({ from: 86_566, to: 86_647 })
    for (const [i, span] of spans.entries()) if (i > 0) expect(span?.from).toBe(spans[i - 1]?.to)
  })

  it('gap_test.edl has clip names without asterisks, and gaps', () => {
    const list = edlOf(textOf('gap_test.edl'))
    expect(list.decisions.map(({ name }) => name)).toEqual(['shot1', 'shot2', 'shot3'])
    // 00:00:01:16 = 40 and 00:00:04:06 = 102 frames of 24.
    expect(list.decisions.map(({ recordSpan }) => recordSpan)).toEqual([
      { from: 0, to: 24 },
      { from: 40, to: 64 },
      { from: 102, to: 126 },
    ])
    expect(list.decisions[1]?.sourceSpan?.from).toBe(23 * 86_400)
  })

  it('no_spaces_test.edl and screening_example.edl keep markers as words only', () => {
    const [tight, loose] = ['no_spaces_test.edl', 'screening_example.edl'].map((name) =>
      edlOf(textOf(name)),
    )
    expect(tight?.decisions).toHaveLength(9)
    expect(tight?.decisions.map(({ name }) => name)).toEqual(
      loose?.decisions.map(({ name }) => name),
    )
    const [, , , fourth] = tight?.decisions ?? []
    expect(fourth?.values).toEqual({})
    // ZZ100_50 is short for the file's name, which says more.
    expect(fourth?.source).toBe('ZZ100_504C.LAY1.02')
    expect(tight && foreignIn(tight, 3).comments).toEqual([
      'LOC: 01:00:01:14 RED     ANIM FIX NEEDED',
      'LOC: 01:00:02:14 PINK     ANIM FIX NEEDED',
      'SOURCE FILE: ZZ100_504C.LAY1.02',
    ])
  })
})
