import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Decision, DecisionList } from '../../../../src/core/formats/decisionList.ts'
import { readOtio } from '../../../../src/core/formats/otio/readOtio.ts'
import { rate } from '../../../../src/core/time/rate.ts'

/*
 * Sample files of OpenTimelineIO (Apache-2.0, licences beside them). The values are read off the
 * files: ranges as they stand there, places as the sums of the durations before.
 */
const FILES = resolve(import.meta.dirname, '../../../media/interchange/otio')

const listOf = (name: string): DecisionList => {
  const read = readOtio(readFileSync(`${FILES}/${name}.otio`, 'utf8'), undefined)
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

const row = ({ name, source, sourceSpan, recordSpan, transition }: Decision) => [
  name,
  source,
  sourceSpan?.from,
  sourceSpan?.to,
  recordSpan?.from,
  recordSpan?.to,
  transition.kind === 'cut' ? 'cut' : `${transition.kind} ${transition.frames}`,
]

const told = (list: DecisionList) => list.notTaken.map(({ says, at }) => `${at?.line}: ${says}`)

describe('the sample files of OpenTimelineIO', () => {
  it('simple_cut: four clips, the last as long as its media', () => {
    const list = listOf('simple_cut')
    expect(list).toMatchObject({ title: 'Figure 1 - Simple Cut List', rate: rate(24) })
    expect(list.decisions.map(row)).toEqual([
      ['Clip-001', 'titles.mov', 3, 6, 0, 3, 'cut'],
      ['Clip-002', 'wind-up.mov', 2, 8, 3, 9, 'cut'],
      ['Clip-003', 'punchline.mov', 0, 4, 9, 13, 'cut'],
      ['Clip-004', 'credits.mov', 100, 106, 13, 19, 'cut'],
    ])
    expect(list.decisions.map(({ line }) => line)).toEqual([11, 51, 91, 131])
    expect(list.notTaken).toEqual([])
  })

  it('transition: a dissolve of two frames before the cut and three after begins its clip, as in an EDL', () => {
    const list = listOf('transition')
    expect(list.title).toBe('Figure 2 - Transitions')
    expect(list.decisions.map(row)).toEqual([
      ['Clip-001', 'titles.mov', 3, 6, 0, 3, 'cut'],
      ['Clip-002', 'wind-up.mov', 2, 6, 3, 7, 'cut'],
      ['Clip-003', 'punchline.mov', 1, 7, 7, 13, 'dissolve 5'],
      ['Clip-004', 'credits.mov', 100, 106, 13, 19, 'cut'],
    ])
    expect(list.notTaken).toEqual([])
  })

  it('clip_example: one clip between gaps, and a dissolve into a gap', () => {
    const list = listOf('clip_example')
    expect(list.title).toBe('transition_test')
    expect(list.decisions.map(row)).toEqual([['Clip-001', '', 3, 6, 8, 11, 'cut']])
    expect(told(list)).toEqual([
      '84: The transition “Dissolve” leads into no clip, and is only kept.',
      '11: 2 gaps are kept, and written back beside the clips next to them.',
    ])
  })

  it('multitrack: the first of three layers, and the others told', () => {
    const list = listOf('multitrack')
    expect(list.title).toBe('OTIO TEST - multitrack.Exported.01')
    expect(list.decisions.map(row)).toEqual([
      ['tech.fux (loop)-HD.mp4', '', 0, 720, 0, 720, 'cut'],
      ['out-b (loop)-HD.mp4', '', 0, 722, 803, 1525, 'cut'],
      ['brokchrd (loop)-HD.mp4', '', 0, 720, 1957, 2677, 'cut'],
    ])
    expect(told(list).map((each) => each.slice(0, 37))).toEqual([
      '164: Layer 2 “Sequence 2” with 1 clip',
      '245: Layer 3 “Sequence 3” with 1 clip',
      '38: 3 gaps are kept, and written back',
    ])
  })

  it('screening_example: the record times of the event list it was made from', () => {
    const list = listOf('screening_example')
    expect(list).toMatchObject({ title: 'Example_Screening.01', rate: rate(24) })
    // screening_example.edl: record in 00:59:53:11, which is 86243 frames at 24.
    expect(list.decisions.map(row)).toEqual([
      ['ZZ100_501 (LAY3)', 'ZZ100_50', 86501, 86532, 86243, 86274, 'cut'],
      ['ZZ100_502A (LAY3)', 'ZZ100_50', 86557, 86607, 86274, 86324, 'cut'],
      ['ZZ100_503A (LAY1)', 'ZZ100_50', 86601, 86629, 86324, 86352, 'cut'],
      ['ZZ100_504C (LAY1)', 'ZZ100_50', 86641, 86756, 86352, 86467, 'cut'],
      ['ZZ100_504B (LAY1)', 'ZZ100_50', 86753, 86854, 86467, 86568, 'cut'],
      ['ZZ100_507C (LAY2)', 'ZZ100_50', 86501, 86662, 86568, 86729, 'cut'],
      ['ZZ100_508 (LAY2)', 'ZZ100_50', 86628, 86798, 86729, 86899, 'cut'],
      ['ZZ100_510 (LAY1)', 'ZZ100_51', 86722, 86858, 86899, 87035, 'cut'],
      ['ZZ100_510B (LAY1)', 'ZZ100_51', 86501, 86758, 87035, 87292, 'cut'],
    ])
    const markers = list.decisions.map(({ foreign }) => {
      const kept = JSON.parse(foreign[0]?.text ?? '{}')
      return kept.markers.map(
        (each: {
          readonly OTIO_SCHEMA: string
          readonly name: string
          readonly color: { readonly name: string }
          readonly marked_range: { readonly start_time: { readonly value: number } }
        }) => [each.OTIO_SCHEMA, each.name, each.color.name, each.marked_range.start_time.value],
      )
    })
    expect(markers[3]).toEqual([
      ['Marker.3', 'ANIM FIX NEEDED', 'RED', 86438],
      ['Marker.3', 'ANIM FIX NEEDED', 'PINK', 86462],
    ])
    expect(markers[6]).toEqual([['Marker.3', '', 'GREEN', 86773]])
    expect(markers.flat()).toHaveLength(3)
    expect(told(list)).toEqual([
      '176: 3 markers of clips are not applied or shown, but kept and written back.',
    ])
  })
})
