import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { DecisionList } from '../../../../src/core/formats/decisionList.ts'
import { readEdl } from '../../../../src/core/formats/edl/readEdl.ts'
import { readEdlForReel } from '../../../../src/core/formats/edl/readEdlForReel.ts'
import { type Rate, rate } from '../../../../src/core/time/rate.ts'

// Written by others; licences beside them in test/media/interchange.
const FOLDER = join(import.meta.dirname, '../../../media/interchange/edl')
const textOf = (name: string): string => readFileSync(join(FOLDER, name), 'utf8')

const NTSC = rate(30_000, 1001)

const listFor = (text: string, reelRate: Rate, isDropFrame = false): DecisionList => {
  const read = readEdlForReel(text, { rate: reelRate, isDropFrame })
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

const unevenIn = ({ decisions }: DecisionList): number =>
  decisions.filter(({ sourceSpan: a, recordSpan: b }) => a && b && a.to - a.from !== b.to - b.from)
    .length

const event = (number: number, source: string, record: string): string =>
  `00${number}  REEL_A   V     C        ${source} ${record}\n`

const TWO_SECONDS = '01:00:00:00 01:00:02:00'

describe('an edit decision list for a reel of another rate', () => {
  it('is read at 24 on a reel of 25 where every cut then lasts as long on both sides', () => {
    const text = textOf('screening_example.edl')
    const at25 = readEdl(text, { rate: rate(25), isDropFrame: false })
    expect(at25.ok && unevenIn(at25.value)).toBe(3)
    const list = listFor(text, rate(25))
    expect([list.rate, unevenIn(list)]).toEqual([rate(24), 0])
    expect(list.notTaken[0]?.says).toBe(
      'Its labels and lengths fit 24 frames a second, with no cut of different length in source and record, not the 25 of the reel, with 3 cuts; it was read at 24.',
    )
    expect(list.notTaken.some(({ says }) => says.includes('M2'))).toBe(false)
  })

  it('is read at 25 on a reel of 24 that has not all of its labels', () => {
    const list = listFor(textOf('25fps.edl'), rate(24))
    expect([list.rate, unevenIn(list)]).toEqual([rate(25), 0])
    expect(list.notTaken[0]?.says).toBe(
      'Its labels and lengths fit 25 frames a second, not the 24 of the reel; it was read at 25.',
    )
  })

  it('is read at the reel’s rate, and nothing told, where it fits that', () => {
    for (const reelRate of [rate(24), rate(24_000, 1001)]) {
      const list = listFor(textOf('screening_example.edl'), reelRate)
      expect(list.rate).toEqual(reelRate)
      expect(list.notTaken.some(({ says }) => says.includes('fit'))).toBe(false)
    }
  })

  it('stays at the reel’s rate where no other leaves fewer cuts that do not fit', () => {
    const text = event(1, '01:00:00:00 01:00:03:00', TWO_SECONDS)
    const list = listFor(text, rate(25))
    expect(list.rate).toEqual(rate(25))
    expect(list.notTaken.map(({ says }) => says.slice(0, 24))).toEqual(['The source has 75 frames'])
  })

  it('is not judged by events whose speed it states', () => {
    const text = `${event(1, '01:00:00:00 01:00:01:24', TWO_SECONDS)}M2   REEL_A         024.5                01:00:00:00\n`
    expect(listFor(text, rate(30)).rate).toEqual(rate(30))
  })

  it('is read as drop-frame where its labels say so and the reel cannot', () => {
    const drop = event(1, '01:00:00;00 01:00:02;00', '10:00:00;00 10:00:02;00')
    const list = listFor(drop, rate(25))
    expect([list.rate, list.isDropFrame]).toEqual([NTSC, true])
    expect(list.decisions[0]?.recordSpan?.from).toBe(1_078_920)
  })

  it('is read at 30 on a drop-frame reel where it has labels that such counting leaves out', () => {
    const text = event(1, '00:00:59:29 00:01:00:01', '00:01:00:00 00:01:00:02')
    const list = listFor(text, NTSC, true)
    expect(list.rate).toEqual(rate(30))
    expect(list.decisions[0]?.recordSpan).toEqual({ from: 1800, to: 1802 })
  })

  it('says whether its counts drop frames, where its rate can', () => {
    const at = (mode: string) => listFor(`${mode}${event(1, TWO_SECONDS, TWO_SECONDS)}`, NTSC, true)
    expect(at('FCM: NON-DROP FRAME\n').isDropFrame).toBe(false)
    expect(at('FCM: DROP FRAME\n').isDropFrame).toBe(true)
    expect(at('').isDropFrame).toBe(undefined)
  })

  it('goes by the rate that a list of ours states', () => {
    const text = `* FRAME RATE: 24\n${event(1, TWO_SECONDS, TWO_SECONDS)}`
    const list = listFor(text, rate(25))
    expect(list.rate).toEqual(rate(24))
    expect(list.decisions[0]?.recordSpan).toEqual({ from: 86_400, to: 86_448 })
    const uneven = `* FRAME RATE: 25\n${event(1, '01:00:00:01 01:00:02:00', '01:00:00:00 01:00:01:23')}`
    expect(listFor(uneven, rate(25)).rate).toEqual(rate(25))
    const unfit = `* FRAME RATE: 18\n${event(1, '01:00:00:20 01:00:02:20', TWO_SECONDS)}`
    expect(listFor(unfit, rate(25)).rate).toEqual(rate(25))
  })

  it('is refused as it is at the reel’s rate where no rate fits it', () => {
    const timing = { rate: rate(25), isDropFrame: false }
    for (const text of [
      '',
      'TITLE: no event\n',
      `${event(1, TWO_SECONDS, TWO_SECONDS)}2 R V C 01:00:00:00\n`,
      event(1, '01:00:00:00 01:00:02:99', TWO_SECONDS),
      event(1, '01:00:02:00 01:00:00:00', TWO_SECONDS),
    ]) {
      const read = readEdlForReel(text, timing)
      expect(read.ok).toBe(false)
      expect(read).toEqual(readEdl(text, timing))
    }
  })
})
