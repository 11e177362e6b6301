import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { keptOfCue, keptOfReel } from '../../../../src/core/formats/cdl/cdlWords.ts'
import { readCdlList } from '../../../../src/core/formats/cdl/readCdlList.ts'
import type { ListTiming } from '../../../../src/core/formats/decisionList.ts'
import { rate } from '../../../../src/core/time/rate.ts'

const MEDIA = resolve(import.meta.dirname, '../../../media/interchange/cdl')

const list = (text: string) => {
  const read = readCdlList(text, undefined)
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

describe('ASC CDL as a list of decisions', () => {
  it('has ids as names, media references as sources, and no times', () => {
    const { format, rate, decisions } = list(readFileSync(`${MEDIA}/cdl_test1.cdl`, 'utf8'))
    expect([format, rate]).toEqual(['cdl', undefined])
    expect(decisions.map(({ name, source }) => [name, source])).toEqual([
      ['cc0001', 'some/Project/image.dpx'],
      ['cc0002', 'some/Project/image.dpx'],
      ['cc0003', ''],
      ['', ''],
      ['', ''],
    ])
    expect(decisions.map(({ line }) => line)).toEqual([18, 44, 68, 89, 100])
    for (const { sourceSpan, recordSpan, transition, values } of decisions) {
      expect([sourceSpan, recordSpan]).toEqual([undefined, undefined])
      expect(transition).toEqual({ kind: 'cut', frames: 0 })
      expect(values).not.toHaveProperty('note')
    }
  })

  it('gives the grade that is the correction: lift, gamma, gain of cdl_test1.ccc', () => {
    const [first] = list(readFileSync(`${MEDIA}/cdl_test1.ccc`, 'utf8')).decisions
    expect(first?.values.grade).toEqual({
      lift: [-0.03, -0.02, 0],
      gamma: [0.8, 1, 1],
      gain: [0.97, 0.98, 0.9],
      saturation: 1.7,
    })
  })

  it('keeps id and descriptions of three kinds at each level, and those of the whole list', () => {
    const { decisions, foreign } = list(readFileSync(`${MEDIA}/cdl_test1.cdl`, 'utf8'))
    const kept = keptOfCue(decisions[0]?.foreign ?? [])
    expect(kept.id).toBe('cc0001')
    expect(kept.decision.map(({ name }) => name)).toEqual([
      'Description',
      'Description',
      'InputDescription',
      'ViewingDescription',
    ])
    expect(kept.sop.map(({ text }) => text)).toEqual(['Example look', 'For scenes 1 and 2'])
    expect(keptOfReel(foreign).map(({ text }) => text)).toEqual([
      'This is a color decision list example.',
      'These should be applied in ACESproxy color space.',
      'View using the ACES RRT+ODT transforms.',
      'It includes all possible description uses.',
    ])
    expect(decisions[4]?.foreign).toEqual([])
  })

  it('refuses numbers past those of a grade, with the line', () => {
    const read = readCdlList(
      `<ColorCorrectionCollection><ColorCorrection/>
<ColorCorrection><SOPNode><Slope>1 1 1</Slope><Offset>0 0 2e6</Offset><Power>1 1 1</Power></SOPNode></ColorCorrection>
</ColorCorrectionCollection>`,
      undefined,
    )
    expect(!read.ok && read.problems.map(({ code, at }) => [code, at?.line])).toEqual([
      ['out-of-range', 2],
    ])
  })

  it('says where descriptions are too long to be kept, and takes the rest', () => {
    const { decisions, notTaken } = list(
      `<ColorCorrection id="a">\n<Description>${'x'.repeat(100_000)}</Description></ColorCorrection>`,
    )
    expect(decisions[0]?.foreign).toEqual([])
    expect(decisions[0]?.name).toBe('a')
    expect(notTaken.map(({ code, at }) => [code, at?.line])).toEqual([['too-large', 1]])
  })

  it('takes the label that our own files say for the place, up to the next one’s', () => {
    const correction = (label: string) =>
      `<ColorCorrection><Description>Cue 3, in at ${label}</Description></ColorCorrection>`
    const spans = (labels: readonly string[], timing: ListTiming | undefined) => {
      const read = readCdlList(
        `<ColorCorrectionCollection>\n${labels.map(correction).join('\n')}</ColorCorrectionCollection>`,
        timing,
      )
      if (!read.ok) throw new Error(read.problems[0].says)
      const { decisions, notTaken, rate: listRate } = read.value
      expect(listRate).toBe(undefined)
      expect(decisions.map(({ sourceSpan }) => sourceSpan)).toEqual(
        decisions.map(({ recordSpan }) => recordSpan),
      )
      return [
        decisions.map(({ recordSpan }) => recordSpan && [recordSpan.from, recordSpan.to]),
        notTaken.map(({ says }) => says),
      ]
    }
    const at25 = { rate: rate(25), isDropFrame: false }
    const labels = ['10:00:00:00', '10:00:04:05', '10:00:04:05', '23:59:59:24', '00:00:00:01']
    expect(spans(labels, at25)).toEqual([
      [
        [900_000, 900_105],
        [900_105, 900_106],
        // Over half a day ahead is no follower.
        [900_105, 900_106],
        [2_159_999, 2_160_001],
        [1, 2],
      ],
      [],
    ])
    expect(spans(labels, undefined)[0]).toEqual(labels.map(() => undefined))
    // 10:01:00;02 is 1,078,920 + 60 · 30 frames after 10:00:00;00 of drop-frame counting.
    const drop = { rate: rate(30_000, 1001), isDropFrame: true }
    expect(spans(['10:01:00;02'], drop)[0]).toEqual([[1_080_720, 1_080_721]])
    expect(
      spans(['10:00:00:24', '10:00:00:23', '10:00:01:24'], { ...at25, rate: rate(24) }),
    ).toEqual([
      [undefined, [864_023, 864_024], undefined],
      ['From line 2: “10:00:00:24” is not counted as this reel counts; such places are not taken.'],
    ])
  })

  it('reads what a job keeps as nothing where it is not of our form', () => {
    for (const text of ['', 'x', '[]', '{"id":1}', '{"sop":[{"name":"Slope","text":"1"}]}'])
      expect(keptOfCue([{ format: 'cdl', text }])).toMatchObject({ id: '', sop: [] })
    expect(keptOfReel([{ format: 'cdl', text: '{"words":"x"}' }])).toEqual([])
  })
})
