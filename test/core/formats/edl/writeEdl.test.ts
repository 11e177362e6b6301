import { describe, expect, it } from 'vitest'
import { gradeToCdl } from '../../../../src/core/colour/cdl.ts'
import { writeEdl } from '../../../../src/core/formats/edl/writeEdl.ts'
import type { Job } from '../../../../src/core/job/job.ts'
import { rate } from '../../../../src/core/time/rate.ts'
import { readEventLines } from '../../../support/readEventLines.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../../support/sampleJob.ts'

const textOf = (job: Job): string => {
  const written = writeEdl(job, REEL_ID)
  if (!written.ok) throw new Error(written.problems[0].says)
  return written.value.files[0]?.text ?? ''
}

const graded = sampleJob(undefined, (cue, i) => ({
  ...cue,
  ramp: i === 2 ? 12 : 0,
  rampShape: i === 2 ? 'eased' : 'linear',
  note: i === 1 ? 'Hände zu rot – “mehr Grün”\nzweite Zeile' : '',
  grade: { lift: [0.01, 0, -0.02], gamma: [1.14, 1, 0.9], gain: [1.1, 1, 0.95], saturation: 1.06 },
}))

describe('edit decision lists written', () => {
  it('are read by a strict reader, one event a cue without a gap', () => {
    const events = readEventLines(textOf(graded))
    expect(events.map(({ event }) => event)).toEqual([1, 2, 3, 4])
    expect(events[0]?.times).toEqual(['10:00:00:00', '10:00:04:00', '10:00:00:00', '10:00:04:00'])
    expect(events.at(-1)?.times[1]).toBe('10:00:40:00')
  })

  it('carry slope, offset, power and saturation to six decimals', () => {
    const [event] = readEventLines(textOf(graded))
    const { slope, offset, power, saturation } = gradeToCdl({
      lift: [0.01, 0, -0.02],
      gamma: [1.14, 1, 0.9],
      gain: [1.1, 1, 0.95],
      saturation: 1.06,
    })
    for (const [i, value] of [...slope, ...offset, ...power].entries())
      expect(event?.sop[i]).toBeCloseTo(value, 6)
    expect(event?.sat).toBe(saturation)
  })

  it('say ramps and each line of a note in comments, in plain ASCII', () => {
    const events = readEventLines(textOf(graded))
    expect(events[2]?.comments).toContain('RAMP 012 FRAMES EASED')
    expect(events[1]?.comments.slice(-2)).toEqual([
      'NOTE: Hande zu rot - "mehr Grun"',
      'NOTE: zweite Zeile',
    ])
  })

  it('state the counting mode for 30-based rates only, and the rate in a comment', () => {
    expect(textOf(graded)).not.toContain('FCM')
    expect(textOf(graded)).toContain('\r\n* FRAME RATE: 25\r\n')
    const ntsc = sampleReel({ rate: rate(30_000, 1001), isDropFrame: true })
    expect(textOf(sampleJob([0], undefined, ntsc))).toContain(
      'FCM: DROP FRAME\r\n* FRAME RATE: 30000/1001\r\n',
    )
    const plain = sampleReel({ rate: rate(30), isDropFrame: false })
    expect(textOf(sampleJob([0], undefined, plain))).toContain('FCM: NON-DROP FRAME\r\n')
    const cannotDrop = sampleReel({ rate: rate(30), isDropFrame: true })
    expect(textOf(sampleJob([0], undefined, cannotDrop))).toContain('FCM: NON-DROP FRAME\r\n')
  })

  it('write drop-frame times with colons, the mode standing in the FCM line', () => {
    const reel = sampleReel({
      rate: rate(30_000, 1001),
      isDropFrame: true,
      startCount: 0,
      frames: 2000,
    })
    const events = readEventLines(textOf(sampleJob([0, 1799, 1800], undefined, reel)))
    expect(events.map(({ times }) => times[0])).toEqual([
      '00:00:00:00',
      '00:00:59:29',
      '00:01:00:02',
    ])
  })

  it('go on from 00:00:00:00 after midnight', () => {
    const reel = sampleReel({ startCount: 24 * 3600 * 25 - 50, frames: 200 })
    const events = readEventLines(textOf(sampleJob([0, 100], undefined, reel)))
    expect(events.map(({ times }) => times.slice(0, 2))).toEqual([
      ['23:59:58:00', '00:00:02:00'],
      ['00:00:02:00', '00:00:06:00'],
    ])
  })

  it.each(['ASC_SAT 9', 'ASC_SOP (9 9 9)(9 9 9)(9 9 9)', 'FROM CLIP NAME: OTHER'])(
    'never let the note “%s” pass for a line of their own',
    (note) => {
      const job = sampleJob([0], (cue) => ({ ...cue, note }))
      const [event] = readEventLines(textOf(job))
      expect(event?.sop).toEqual([1, 1, 1, 0, 0, 0, 1, 1, 1])
      expect(event?.sat).toBe(1)
      expect(event?.comments).toEqual([
        'FROM CLIP NAME: Orlop reel 1 CUE 0001',
        'FULL REEL NAME: Orlop reel 1',
        `NOTE: ${note}`,
      ])
    },
  )

  it('write back what another list said, as comments that no reader takes for values', () => {
    const foreign = {
      name: 'shot 7',
      events: ['007  TAPE_4   V     C        01:00:00:00 01:00:04:00 00:00:00:00 00:00:04:00'],
      comments: [
        'LOC: 01:00:01:00 RED check',
        'M2   TAPE_4       000.0   01:00:00:00',
        'ÁSC_SAT 9',
      ],
      notTaken: ['ASC_SAT -1'],
    }
    const job = sampleJob([0], (cue) => ({
      ...cue,
      foreign: [{ format: 'edl', text: JSON.stringify(foreign) }],
    }))
    expect(readEventLines(textOf(job))[0]?.comments).toEqual([
      'FROM CLIP NAME: shot 7',
      'FULL REEL NAME: Orlop reel 1',
      'FROM EVENT: 007 TAPE_4 V C 01:00:00:00 01:00:04:00 00:00:00:00 00:00:04:00',
      'LOC: 01:00:01:00 RED check',
      'M2 TAPE_4 000.0 01:00:00:00',
      'COMMENT: ASC_SAT 9',
    ])
  })

  it.each(['', 'nonsense', '[1]', '{"comments":[1]}', '{"name":3}'])(
    'pass over words of other lists that are kept as “%s”',
    (text) => {
      const job = sampleJob([0], (cue) => ({ ...cue, foreign: [{ format: 'edl', text }] }))
      expect(textOf(job)).toBe(textOf(sampleJob([0])))
    },
  )

  it('hold the title to 70 characters, or take the reel for a title', () => {
    const titled = (title: string): Job => {
      const job = sampleJob([0])
      return { ...job, info: { job: { ...job.info.job, title } } }
    }
    const long = titled('Slack water '.repeat(9))
    expect(textOf(long).split('\r\n')[0]).toBe(`TITLE: ${'Slack water '.repeat(9).slice(0, 70)}`)
    expect(textOf(titled('')).split('\r\n')[0]).toBe('TITLE: Orlop reel 1')
  })

  it('are split after 999 events', () => {
    const firsts = Array.from({ length: 2100 }, (_, i) => i * 3)
    const written = writeEdl(sampleJob(firsts, undefined, sampleReel({ frames: 9000 })), REEL_ID)
    if (!written.ok) throw new Error(written.problems[0].says)
    const counts = written.value.files.map(({ text }) => readEventLines(text).length)
    expect(counts).toEqual([999, 999, 102])
    expect(written.value.files.map(({ text }) => text.split('\r\n')[0])).toEqual([
      'TITLE: Orlop 1 OF 3',
      'TITLE: Orlop 2 OF 3',
      'TITLE: Orlop 3 OF 3',
    ])
  })

  it('are refused where their times cannot tell frames apart', () => {
    const fast = writeEdl(sampleJob([0], undefined, sampleReel({ rate: rate(120) })), REEL_ID)
    expect(!fast.ok && fast.problems[0].says).toContain('100 frames a second')
    const long = sampleReel({ frames: 24 * 3600 * 25 + 1 })
    const written = writeEdl(sampleJob([0], undefined, long), REEL_ID)
    expect(!written.ok && written.problems[0].says).toContain('24 hours')
  })
})
