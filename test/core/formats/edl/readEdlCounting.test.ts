import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ListTiming } from '../../../../src/core/formats/decisionList.ts'
import { readEdlLabel } from '../../../../src/core/formats/edl/edlLabel.ts'
import { type Rate, rate } from '../../../../src/core/time/rate.ts'
import { formatTimecode, framesPerDay, parseTimecode } from '../../../../src/core/time/timecode.ts'
import { edlOf, notTakenOf, refusalsOf } from '../../../support/readEdlWhole.ts'

const NTSC = rate(30_000, 1001)
const DOUBLE_NTSC = rate(60_000, 1001)
const at = (r: Rate, isDropFrame = false): ListTiming => ({ rate: r, isDropFrame })

/** An event whose four times are two labels twice. */
const event = (from: string, to: string): string =>
  `001  R        V     C        ${from} ${to} ${from} ${to}`

const spanOf = (text: string, timing?: ListTiming) => edlOf(text, timing).decisions[0]?.recordSpan

describe('counting the times of a list', () => {
  it.each([
    ['00:00:00:23', rate(24)],
    ['00:00:00:24', rate(25)],
    ['00:00:00:29', rate(30)],
    ['00:00:00:30', rate(50)],
    ['00:00:00:50', rate(60)],
    ['00:00:00;12', NTSC],
    ['00:00:00;30', DOUBLE_NTSC],
  ])('takes the lowest rate that a frame %s fits', (to, expected) => {
    expect(edlOf(event('00:00:00:00', to)).rate).toEqual(expected)
  })

  it('takes the rate a list of ours states, if all labels fit it', () => {
    const stated = (r: string): string =>
      `* FRAME RATE: ${r}\n${event('00:00:00:00', '00:00:00:12')}`
    expect(edlOf(stated('24000/1001')).rate).toEqual(rate(24_000, 1001))
    expect(edlOf(stated('18')).rate).toEqual(rate(18))
    expect(edlOf(stated('12')).rate).toEqual(rate(24))
    expect(edlOf(stated('about 50')).rate).toEqual(rate(24))
  })

  // facts/edl.md §3: labels of 30 and 60 drop-frame, from OpenTimelineIO's table and computed.
  it.each([
    ['00:00:59;29', 1799, NTSC],
    ['00:01:00;02', 1800, NTSC],
    ['00:08:59;29', 16_183, NTSC],
    ['00:10:00;00', 17_982, NTSC],
    ['10:03:00;05', 1_084_319, NTSC],
    ['00:01:00;04', 3600, DOUBLE_NTSC],
    ['05:01:30;03', 1_084_319, DOUBLE_NTSC],
  ])('counts %s as %i', (label, count, r) => {
    for (const mark of [';', '.', ','])
      expect(spanOf(event('00:00:00;00', label.replace(';', mark)), at(r))?.to).toBe(count)
    const colons = event('00:00:00:00', label.replace(';', ':'))
    expect(spanOf(`FCM: DROP FRAME\n${colons}`, at(r))?.to).toBe(count)
    expect(spanOf(colons, at(r, true))?.to).toBe(count)
  })

  it('goes by the FCM line above an event, in all its spellings, before the timing', () => {
    const later = event('00:00:00:00', '00:10:00:00')
    const spans = edlOf(
      ['FCM: DROP FRAME', 'FCM: NON-DROP FRAME', 'FCM: NON DROP FRAME', 'fcm:drop', 'FCM: NDF']
        .map((mode) => `${mode}\n${later}`)
        .join('\n'),
      at(NTSC, true),
    ).decisions.map(({ recordSpan }) => recordSpan?.to)
    expect(spans).toEqual([17_982, 18_000, 18_000, 17_982, 18_000])
  })

  it('goes by the punctuation under a contrary FCM line, and says so', () => {
    const list = edlOf(`FCM: NON-DROP FRAME\n${event('00:00:00;00', '00:10:00;00')}`, at(NTSC))
    expect(list.decisions[0]?.recordSpan?.to).toBe(17_982)
    expect(notTakenOf(list)[0]).toMatch(/^2: Labels here have drop-frame punctuation under FCM/u)
  })

  it('takes colons for non-drop where other labels of the list have the punctuation', () => {
    const mixed = '001  R  V  C  00:00:00:00 00:10:00:00 00:00:00;00 00:09:59;28'
    const list = edlOf(mixed, at(NTSC, true))
    expect(list.decisions[0]?.sourceSpan?.to).toBe(18_000)
    expect(list.decisions[0]?.recordSpan?.to).toBe(17_980)
  })

  it.each([
    [at(rate(24)), event('01:00:00:00', '01:00:13;23'), /^1: .*drop-frame, which no count of 24/u],
    [
      at(rate(25)),
      `FCM: DROP FRAME\n${event('00:00:00:00', '00:00:02:00')}`,
      /^2: .*29.97 or 59.94/u,
    ],
    [at(rate(30)), event('00:00:00;00', '00:00:02;00'), /^1: .*no count of 30 frames a second/u],
    [at(NTSC, true), event('00:00:00:00', '00:01:00:00'), /^1: 00:01:00:00 is left out by drop/u],
    [at(NTSC), event('00:00:00;00', '00:01:00;01'), /^1: 00:01:00;01 is left out by drop-frame/u],
    [at(DOUBLE_NTSC), event('00:00:00;00', '00:01:00;03'), /^1: 00:01:00;03 is left out/u],
    [at(rate(24)), event('00:00:00:00', '00:00:02:24'), /^1: 00:00:02:24 is past the 24 .*25, 30/u],
    [at(rate(24)), event('00:00:00:00', '00:00:02:75'), /no usual rate fits the list\.$/u],
    [undefined, event('00:00:00:00', '00:00:02:75'), /^1: Frames of labels here go up to 75/u],
    [undefined, event('00:00:00;00', '00:00:02;60'), /^1: Frames of labels here go up to 60/u],
  ])('refuses labels it has no place for (%#)', (timing, text, says) => {
    expect(refusalsOf(text, timing).join('\n')).toMatch(says)
  })

  it.each([
    rate(24),
    rate(25),
    NTSC,
    rate(30),
    rate(50),
    DOUBLE_NTSC,
    rate(60),
    rate(24_000, 1001),
  ])('agrees with timecode everywhere else at %o', (r) => {
    for (const drops of [false, true]) {
      const day = framesPerDay(r, drops)
      fc.assert(
        fc.property(fc.nat(day - 2), (count) => {
          const [from, to] = [count, count + 1].map((n) => formatTimecode(n, r, drops))
          expect(spanOf(event(from ?? '', to ?? ''), at(r, drops))).toEqual({
            from: count,
            to: count + 1,
          })
        }),
        { seed: 1, numRuns: 100 },
      )
    }
  })

  it('takes for a label what timecode takes for one', () => {
    const piece = fc.constantFrom('0', '1', '2', '5', '9', ':', ';', '.', ',', '-', 'a', ' ')
    const nearly = fc
      .tuple(fc.nat(11), piece, fc.constantFrom('12:34:56:10', '1:00:00:00', '01:02:03;104'))
      .map(([place, put, label]) => label.slice(0, place) + put + label.slice(place + 1))
    fc.assert(
      fc.property(nearly, (text) => {
        const label = readEdlLabel(text, 0, text.length)
        const known =
          parseTimecode(text, rate(1000), false).ok || parseTimecode(text, NTSC, true).ok
        const isPlain = !/[;., ]/u.test(text)
        if (isPlain) expect(label !== undefined).toBe(known)
      }),
      { seed: 1, numRuns: 1000 },
    )
  })
})
