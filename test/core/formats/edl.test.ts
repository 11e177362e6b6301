import { describe, expect, it } from 'vitest'
import { gradeToCdl } from '../../../src/core/colour/cdl.ts'
import { edlReelName, edlReelNameIn } from '../../../src/core/formats/edl/edlReelName.ts'
import { lossesEdl } from '../../../src/core/formats/edl/lossesEdl.ts'
import { writeEdl } from '../../../src/core/formats/edl/writeEdl.ts'
import type { Job } from '../../../src/core/job/job.ts'
import type { ReelId } from '../../../src/core/job/recordIds.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { says } from '../../support/lossWords.ts'
import { readEventLines } from '../../support/readEventLines.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

const textOf = (job: Job): string => {
  const written = writeEdl(job, REEL_ID)
  if (!written.ok) throw new Error(written.problems[0].says)
  return written.value.files[0]?.text ?? ''
}

const graded = sampleJob(undefined, (cue, i) => ({
  ...cue,
  ramp: i === 2 ? 12 : 0,
  note: i === 1 ? 'Hände zu rot – “mehr Grün”\nzweite Zeile' : '',
  grade: { lift: [0.01, 0, -0.02], gamma: [1.14, 1, 0.9], gain: [1.1, 1, 0.95], saturation: 1.06 },
}))

describe('edit decision lists', () => {
  it('are read by a strict reader, one event a cue without a gap', () => {
    const events = readEventLines(textOf(graded))
    expect(events.map(({ event }) => event)).toEqual([1, 2, 3, 4])
    expect(events[0]?.times).toEqual(['10:00:00:00', '10:00:04:00', '10:00:00:00', '10:00:04:00'])
    for (const [i, event] of events.entries())
      if (i > 0) expect(event.times[2]).toBe(events[i - 1]?.times[3])
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

  it('say ramps and notes in comments, in plain ASCII', () => {
    const events = readEventLines(textOf(graded))
    expect(events[2]?.comments).toContain('RAMP 012 FRAMES')
    expect(events[1]?.comments.at(-1)).toBe('NOTE: Hande zu rot - "mehr Grun" zweite Zeile')
  })

  it('state the counting mode for 30-based rates only', () => {
    expect(textOf(graded)).not.toContain('FCM')
    const ntsc = sampleReel({ rate: rate(30_000, 1001), isDropFrame: true })
    expect(textOf(sampleJob([0], undefined, ntsc))).toContain('FCM: DROP FRAME\r\n')
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

  it.each(['ASC_SAT 9', 'ASC_SOP (9 9 9)(9 9 9)(9 9 9)', 'FROM CLIP NAME: OTHER'])(
    'never let the note “%s” pass for a line of their own',
    (note) => {
      const job = sampleJob([0], (cue) => ({ ...cue, note }))
      const [event] = readEventLines(textOf(job))
      expect(event?.sop).toEqual([1, 1, 1, 0, 0, 0, 1, 1, 1])
      expect(event?.sat).toBe(1)
      expect(event?.comments).toEqual(['FROM CLIP NAME: Orlop reel 1 CUE 0001', `NOTE: ${note}`])
    },
  )

  it('hold the title to 70 characters and say what is lost, or take the reel for a title', () => {
    const titled = (title: string): Job => {
      const job = sampleJob([0])
      return { ...job, info: { job: { ...job.info.job, title } } }
    }
    const long = titled('Slack water '.repeat(9))
    expect(textOf(long).split('\r\n')[0]).toBe(`TITLE: ${'Slack water '.repeat(9).slice(0, 70)}`)
    expect(says(lossesEdl(long, REEL_ID))).toContain('The whole title')
    expect(textOf(titled('')).split('\r\n')[0]).toBe('TITLE: Orlop reel 1')
    expect(says(lossesEdl(titled('Orlop'), REEL_ID))).not.toContain('whole title')
  })

  it('give reels whose names begin alike names of their own', () => {
    const reels = ['Orlop reel 1', 'Orlop reel 2', 'ORLOP_RE', 'Orlop re 2'].map((name, i) =>
      sampleReel({ id: `reel-${i}` as ReelId, name }),
    )
    const job = { ...sampleJob(), reels: Object.fromEntries(reels.map((reel) => [reel.id, reel])) }
    expect(reels.map(({ id }) => edlReelNameIn(job, id))).toEqual([
      'ORLOP_RE',
      'ORLOP_2',
      'ORLOP_3',
      'ORLOP_4',
    ])
  })

  it('are split after 999 events', () => {
    const firsts = Array.from({ length: 2100 }, (_, i) => i * 3)
    const written = writeEdl(sampleJob(firsts, undefined, sampleReel({ frames: 9000 })), REEL_ID)
    if (!written.ok) throw new Error(written.problems[0].says)
    const counts = written.value.files.map(({ text }) => readEventLines(text).length)
    expect(counts).toEqual([999, 999, 102])
  })

  it.each([
    ['Orlop reel 1', 'ORLOP_RE'],
    ['Zürich', 'ZURICH'],
    ['bl', 'BL_1'],
    ['???', 'REEL'],
  ])('name the reel %s as %s', (name, short) => {
    expect(edlReelName(name)).toBe(short)
  })

  it('tell what they cannot carry', () => {
    const losses = says(lossesEdl(graded, REEL_ID))
    expect(losses).toContain('More than six decimals')
    expect(losses).toContain('Letters outside ASCII and line breaks in the note of cue 2.')
    expect(losses).toContain('ORLOP_RE')
  })
})
