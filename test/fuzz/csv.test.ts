import { expect, it } from 'vitest'
import { CSV_COLUMNS } from '../../src/core/formats/csv/csvColumns.ts'
import { readCsv } from '../../src/core/formats/csv/readCsv.ts'
import { writeCsv } from '../../src/core/formats/csv/writeCsv.ts'
import { rate } from '../../src/core/time/rate.ts'
import { partedBy } from '../support/csvTexts.ts'
import { fuzzReader, textInput } from '../support/fuzzReader.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

const TIMING = { rate: rate(25), isDropFrame: false }

const ledger = (): string => {
  const made = writeCsv(
    sampleJob([0, 100], (cue, index) => ({ ...cue, note: ['a "b", c\r\nd', '=é'][index] ?? '' })),
    REEL_ID,
  )
  return made.ok ? (made.value.files[0]?.text ?? '') : ''
}

const SEEDS = [
  ledger(),
  partedBy(ledger(), ';'),
  partedBy(ledger(), '\t'),
  'sep=;\nfirst frame;lift R;lift G;lift B;gamma R;gamma G;gamma B;gain R;gain G;gain B;saturation\n0;0,1;0;0;1;1;1;1,5;1;1;1\n',
  'timecode in,timecode out,note\r\n10:00:00:00,10:00:04:00,"a, ""b"""\r\n10:00:04:00,,\r\n',
  'first frame,ramp,ramp shape,zoom,pan,tilt,rotation,squeeze,blanking\n0,0,linear,1,0,0,0,1,0\n',
  'slope R,slope G,slope B,offset R,offset G,offset B,power R,power G,power B,saturation\n1,1,1,0,0,0,1,1,1,1\n',
]

const CELLS = [
  '',
  '1',
  '0.5',
  '-1',
  '0,5',
  '1.000',
  '10:00:00:00',
  'eased',
  'agreed',
  '"x"',
  '"',
  "'=1",
  '1e9',
]

it('no damaged ledger throws, hangs or is half read', async () => {
  const { read, refused } = await fuzzReader({
    seeds: textInput.seedsOf(SEEDS),
    makeUp: (chance) => {
      const separator = [',', ',', ';', '\t'][chance(4)] ?? ','
      const columns = Array.from({ length: 1 + chance(4) }, () => CSV_COLUMNS[chance(50)] ?? 'x')
      const rows = Array.from({ length: chance(4) }, () =>
        columns.map(() => CELLS[chance(CELLS.length)] ?? '').join(separator),
      )
      return new TextEncoder().encode([columns.join(separator), ...rows].join('\n'))
    },
    toInput: textInput.toInput,
    read: (text) => readCsv(text, TIMING),
  })
  expect(read).toBeGreaterThan(2000)
  expect(refused).toBeGreaterThan(2000)
})
