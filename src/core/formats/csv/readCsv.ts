import { parseCsv } from '../../base/csv.ts'
import { type Problem, problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { FRAMING_LIMITS } from '../../job/commands/setFraming.ts'
import { NOTE_LIMIT } from '../../job/commands/setNote.ts'
import { GRADE_NAME_LIMIT, SCENE_LIMIT } from '../../job/limits.ts'
import type { Framing } from '../../picture/framing.ts'
import type { Decision, DecisionList, DecisionValues, ListTiming } from '../decisionList.ts'
import { MOST_CUES } from '../job/jobSchema.ts'
import { createTeller } from './createTeller.ts'
import { type CsvCells, csvCells } from './csvCells.ts'
import { type CsvColumn, FRAMING_COLUMNS } from './csvColumns.ts'
import { csvDecimals } from './csvDecimals.ts'
import { unguardText } from './guardedText.ts'
import { ledgerForm } from './ledgerForm.ts'
import { readCsvBoundary } from './readCsvBoundary.ts'
import { readCsvGrade } from './readCsvGrade.ts'
import { readCsvPlace, spansOf, tellShifted } from './readCsvPlace.ts'
import { readHeadings } from './readHeadings.ts'

type Tell = (problem: Problem) => void

const text = (row: CsvCells, column: CsvColumn, limit: number): string | undefined => {
  const cell = row.whole(column)
  if (cell === undefined) return undefined
  const plain = unguardText(cell)
  return plain.length > limit
    ? row.refuse(
        column,
        'too-large',
        `It has ${plain.length} characters; at most ${limit} fit, so shorten it.`,
      )
    : plain
}

const framingOf = (row: CsvCells): Framing | undefined => {
  if (!row.numbers(FRAMING_COLUMNS)) return undefined
  const within = (field: keyof Framing) => row.number(field, ...FRAMING_LIMITS[field]) ?? 0
  return {
    zoom: within('zoom'),
    pan: within('pan'),
    tilt: within('tilt'),
    rotation: within('rotation'),
    squeeze: within('squeeze'),
    blanking: within('blanking'),
  }
}

const rampShapeOf = (row: CsvCells): 'linear' | 'eased' | undefined => {
  const shape = row.cell('ramp shape').toLowerCase()
  if (shape === '' || shape === 'linear' || shape === 'eased') return shape || undefined
  return row.refuse('ramp shape', 'malformed', 'A ramp is linear or eased; write one of both.')
}

/** Without the fields that the list does not state. */
const stated = (
  values: {
    readonly [Field in keyof DecisionValues]: DecisionValues[Field] | undefined
  },
): DecisionValues =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined))

const LONGEST_RAMP = 10_000

const SEPARATOR_WORDS = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' } as const

const valuesOf = (row: CsvCells, tell: Tell): DecisionValues =>
  stated({
    ramp: row.wholeNumber('ramp', LONGEST_RAMP),
    rampShape: rampShapeOf(row),
    boundary: readCsvBoundary(row),
    grade: readCsvGrade(row, tell),
    gradeName: text(row, 'grade name', GRADE_NAME_LIMIT),
    framing: framingOf(row),
    scene: text(row, 'scene', SCENE_LIMIT),
    note: text(row, 'note', NOTE_LIMIT),
  })

/** Tells, once each, of what a ledger says that no list brings back. */
const tellUnread = (rows: readonly CsvCells[], tell: Tell): void => {
  const first = (column: CsvColumn, rest: string): CsvCells | undefined =>
    rows.find((row) => !['', rest].includes(row.cell(column).toLowerCase()))
  const agreed = first('agreement', 'open')
  if (agreed)
    tell(
      problem(
        'not-found',
        `From line ${agreed.line}, column “agreement”: how cues are agreed is not taken from a list.`,
        { line: agreed.line, field: 'agreement' },
      ),
    )
  const alternate = first('alternates', '')
  if (alternate)
    tell(
      problem(
        'missing',
        `From line ${alternate.line}, column “alternates”: these are names without numbers, so that no alternate is taken from them.`,
        { line: alternate.line, field: 'alternates' },
      ),
    )
}

/**
 * A ledger as comma-separated values, as `writeCsv` writes it, after a spreadsheet perhaps: by its
 * headings, in any order of columns; a column or cell that is not there states nothing. Places are
 * taken by the timecode where `timing` tells how it is counted, else by frames of the reel; the
 * grade from lift, gamma and gain, or where these are empty from slope, offset and power. Cells may
 * be parted by semicolons or tabs, and numbers then have decimal commas (all of them or none), as
 * spreadsheets of many countries save a list. Anything that cannot be read refuses the file, with
 * line and column.
 */
export const readCsv = (csv: string, timing: ListTiming | undefined): Result<DecisionList> => {
  const form = ledgerForm(csv)
  const parsed = parseCsv(csv, MOST_CUES + 1, form)
  if (!parsed.ok) return parsed
  const [heads, ...lines] = parsed.value.filter(({ cells }) => cells.some((cell) => cell !== ''))
  if (!heads)
    return fail(problem('missing', 'The file holds no row; give one with headings.', { line: 1 }))
  const [notTaken, refusals] = [createTeller(), createTeller()]
  const places = readHeadings(heads, notTaken.tell)
  if (!places.ok) return places
  const decimals = csvDecimals(lines, places.value, form.separator)
  const rows = lines.map((row) => csvCells(row, places.value, decimals, refusals.tell))
  for (const { line, cells } of lines)
    if (cells.length < heads.cells.length || cells.slice(heads.cells.length).some(Boolean))
      refusals.tell(
        problem(
          'malformed',
          `Line ${line} has ${cells.length} cells, the headings are ${heads.cells.length}; put text with ${SEPARATOR_WORDS[form.separator]} in quotes, or add what is missing.`,
          { line },
        ),
      )
  const found = rows.map((row) => readCsvPlace(row, timing))
  const spans = spansOf(found)
  const decisions = rows.map((row, index): Decision => {
    const values = valuesOf(row, notTaken.tell)
    const frames = values.ramp ?? 0
    return {
      name: row.cell('id'),
      source: '',
      sourceSpan: undefined,
      recordSpan: spans[index],
      transition:
        row.cell('boundary') === 'dissolve' && frames > 0
          ? { kind: 'dissolve', frames }
          : { kind: 'cut', frames: 0 },
      values,
      line: row.line,
      foreign: [],
    }
  })
  if (decisions.length === 0)
    refusals.tell(
      problem('missing', 'The list has headings but no cue; give it a row a cue.', {
        line: heads.line,
      }),
    )
  const [first, ...rest] = refusals.all()
  if (first) return fail(first, ...rest)
  tellShifted(
    found,
    rows.map(({ line }) => line),
    timing,
    notTaken.tell,
  )
  tellUnread(rows, notTaken.tell)
  const hasLabels = timing !== undefined && rows.some((row) => row.cell('timecode in') !== '')
  return ok({
    format: 'csv',
    title: '',
    rate: hasLabels ? timing.rate : undefined,
    decisions,
    foreign: [],
    notTaken: notTaken.all(),
  })
}
