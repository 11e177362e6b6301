import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import type { Result } from '../../src/core/base/result.ts'
import type { DecisionList, ListTiming } from '../../src/core/formats/decisionList.ts'
import { readEdl } from '../../src/core/formats/edl/readEdl.ts'
import { readEdlForReel } from '../../src/core/formats/edl/readEdlForReel.ts'
import { writeEdl } from '../../src/core/formats/edl/writeEdl.ts'
import { checkGrade } from '../../src/core/job/checkGrade.ts'
import { CUE_FOREIGN_LIMIT } from '../../src/core/job/limits.ts'
import { rate } from '../../src/core/time/rate.ts'
import { type Chance, fuzzReader, textInput } from '../support/fuzzReader.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

const FOLDER = join(import.meta.dirname, '../media/interchange/edl')

const ours = (): string => {
  const edit = { note: 'a note\nof two lines', ramp: 12, rampShape: 'eased' } as const
  const written = writeEdl(
    sampleJob([0, 100], (cue) => ({ ...cue, ...edit })),
    REEL_ID,
  )
  return written.ok ? (written.value.files[0]?.text ?? '') : ''
}

const EFFECTS = `TITLE: effects
FCM: DROP FRAME
001  REEL_A   AA/V  C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00
M2   REEL_A         000.0                01:00:00:00
* ASC_SOP (1.1 1.0 0.9)(-0.02 0 0.03)(1.0 0.8 1.25)
002  REEL_A   V     C        01:00:04:00 01:00:04:00 10:00:04:00 10:00:04:00
002  REEL_B   V     W001 025 02:00:00:00 02:00:02:00 10:00:04:00 10:00:06:00
* ASC_CC_XML shot_2
003  REEL_B   V     K B      02:00:02:00 02:00:04:00 10:00:06:00 10:00:08:00
003  TITLES   V     K    010 00:00:00:00 00:00:02:00 10:00:06:00 10:00:08:00
FCM: NON-DROP FRAME
004  REEL_B   A2    C        02:00:02:00 02:00:04:00 10:00:06:00 10:00:08:00
`

const seeds = textInput.seedsOf([
  ...readdirSync(FOLDER).map((name) => readFileSync(join(FOLDER, name), 'utf8')),
  ours(),
  EFFECTS,
])

const WORDS = [
  ...['001', '000002', '2', '9e9', 'REEL_1', 'BL', 'AX', 'V', 'V2', 'A', 'AA/V', 'B', 'NONE'],
  ...['C', 'D', 'W001', 'K', 'K B', 'KO', '010', '255', '99999999999999999999', '00:00:00:00'],
  ...['01:00:00:00', '01:00:02:00', '01:00:02;00', '00:01:00;00', '23:59:59:23', '1:0:0:0', '\t'],
  ...['TITLE:', 'FCM:', 'DROP FRAME', 'NON-DROP FRAME', '*', 'M2', '-025.0', 'RAMP 004 FRAMES'],
  ...['ASC_SOP', 'ASC_SAT', '(1 1 1)', '(0 0 0)', '1e-9', '-1', 'NOTE:', 'NOTE JOINED:', 'LOC:'],
  ...['FROM CLIP NAME:', 'TO CLIP NAME:', 'FROM EVENT:', 'FULL REEL NAME:', 'Reel CUE 0001'],
]

const TIMES = '01:00:00:00 01:00:02:00 01:00:00:00 01:00:02:00'

/** Lines of the format's own words, most of them beginning like an event or a comment. */
const makeUp = (chance: Chance): Uint8Array => {
  const word = () => WORDS[chance(WORDS.length)] ?? ''
  const line = () => {
    const said = Array.from({ length: chance(5) }, word).join(' ')
    switch (chance(4)) {
      case 0:
        return `${chance(1000)} R${chance(9)} V C ${TIMES}`
      case 1:
        return `* ${said}`
      case 2:
        return `${chance(9)} ${word()} ${word()} ${word()} ${said} ${TIMES}`
      default:
        return said
    }
  }
  const text = Array.from({ length: 1 + chance(12) }, line).join(chance(2) ? '\n' : '\r\n')
  return new TextEncoder().encode(text)
}

const TIMINGS: readonly (ListTiming | undefined)[] = [
  undefined,
  { rate: rate(25), isDropFrame: false },
  { rate: rate(30_000, 1001), isDropFrame: true },
]

/** What holds of every list that is read, however it was damaged: nothing is there by half. */
const checkWhole = (text: string, list: DecisionList): void => {
  let lines = 0
  for (const { recordSpan, sourceSpan, values, foreign, line } of list.decisions) {
    expect(recordSpan && recordSpan.to > recordSpan.from).toBe(true)
    expect(sourceSpan && sourceSpan.to >= sourceSpan.from).toBe(true)
    expect(line).toBeGreaterThan(0)
    if (values.grade) expect(checkGrade(values.grade).ok).toBe(true)
    const kept = foreign[0]?.text ?? '{}'
    expect(kept.length).toBeLessThanOrEqual(CUE_FOREIGN_LIMIT)
    lines += Math.max(1, JSON.parse(kept).events?.length ?? 1)
  }
  if (list.notTaken.length > 0 || /FROM EVENT:/iu.test(text)) return
  const events = text
    .split(/[\n\r]/u)
    .filter((each) => /^[\t-\r \ufeff]*\d+([\t-\r \ufeff]|$)/u.test(each))
  expect(lines).toBe(events.length)
}

it('an edit decision list, however damaged, is read whole or refused with its lines', async () => {
  let run = 0
  const read = (text: string): Result<unknown> => {
    const timing = TIMINGS[run++ % TIMINGS.length]
    const list = timing && run % 2 === 0 ? readEdlForReel(text, timing) : readEdl(text, timing)
    if (list.ok) checkWhole(text, list.value)
    return list
  }
  const counts = await fuzzReader({ seeds, makeUp, toInput: textInput.toInput, read, runs: 60_000 })
  expect(counts.read).toBeGreaterThan(8000)
  expect(counts.refused).toBeGreaterThan(12_000)
})
