import { type Problem, problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { gradeOfCdl } from '../../colour/gradeOfCdl.ts'
import { checkGrade } from '../../job/checkGrade.ts'
import type { Foreign } from '../../job/job.ts'
import { CUE_FOREIGN_LIMIT, REEL_FOREIGN_LIMIT } from '../../job/limits.ts'
import type { Decision, DecisionList, ListTiming } from '../decisionList.ts'
import { keptListText, keptText } from './cdlWords.ts'
import { ownPlaces } from './ownPlaces.ts'
import { ownScanOf, ownWordsOf, withoutOwnText } from './ownWords.ts'
import { type ReadCorrection, readCdl } from './readCdl.ts'

/** What is to be kept, if a job can hold it: else a problem is added. */
const kept = (text: string, limit: number, line: number, notTaken: Problem[]): Foreign => {
  if (text === '') return []
  if (text.length <= limit) return [{ format: 'cdl', text }]
  notTaken.push(
    problem('too-large', `Descriptions of more than ${limit} characters are not kept.`, { line }),
  )
  return []
}

/** An id that we made of a cue's number (`correctionId`), which is made anew each time. */
const isOwnId = (id: string, number: number): boolean =>
  id.endsWith(`-cue-${String(number).padStart(4, '0')}`)

/** A correction as a decision; refused where no grade can have its numbers. */
const decisionOf = (
  { id, cdl, words, line }: ReadCorrection,
  ownScan: string | undefined,
  notTaken: Problem[],
): Result<Decision> => {
  const grade = gradeOfCdl(cdl)
  const checked = checkGrade(grade)
  if (!checked.ok) {
    const [{ code, says, at }] = checked.problems
    return fail(problem(code, says, { ...at, line }))
  }
  const own = ownWordsOf(words.correction)
  const isOwnScan = words.mediaRefs.length === 1 && words.mediaRefs[0] === ownScan
  const others = own
    ? {
        ...words,
        id: isOwnId(id, own.number) ? '' : id,
        mediaRefs: isOwnScan ? [] : words.mediaRefs,
        correction: own.rest,
      }
    : words
  return ok({
    name: id,
    source: words.mediaRefs[0] ?? '',
    sourceSpan: undefined,
    recordSpan: undefined,
    transition: { kind: 'cut', frames: 0 },
    values: { grade, ...(own && own.note !== '' ? { note: own.note } : {}) },
    line,
    foreign: kept(keptText(others), CUE_FOREIGN_LIMIT, line, notTaken),
  })
}

/**
 * An ASC CDL file as a list of decisions, which have grades but no times: `readCdl` with ids as
 * names and media references as sources. Only files that we wrote say where a cue begins; with
 * `timing`, which tells how that label is counted, it is the decision's place on the reel. Ids, references and descriptions are kept as they were;
 * of files that we wrote, the note of a cue becomes a note again, and what the program says itself
 * is left out. Refused besides: numbers past those of a grade.
 */
export const readCdlList = (text: string, timing: ListTiming | undefined): Result<DecisionList> => {
  const read = readCdl(text)
  if (!read.ok) return read
  const notTaken: Problem[] = [...read.value.notTaken]
  const refused: Problem[] = []
  const ownScan = ownScanOf(read.value.words)
  const decisions = read.value.corrections.flatMap((correction) => {
    const decision = decisionOf(correction, ownScan, notTaken)
    if (decision.ok) return decision.value
    refused.push(...decision.problems)
    return []
  })
  const [first, ...rest] = refused
  if (first) return fail(first, ...rest)
  const places = read.value.corrections.map(({ words, line }) => {
    const label = ownWordsOf(words.correction)?.label
    return label === undefined ? undefined : { label, line }
  })
  const spans = timing ? ownPlaces(places, timing, (each) => notTaken.push(each)) : []
  const words = keptListText(withoutOwnText(read.value.words))
  return ok({
    format: 'cdl',
    title: '',
    rate: undefined,
    decisions: decisions.map((each, index) => ({
      ...each,
      sourceSpan: spans[index],
      recordSpan: spans[index],
    })),
    foreign: kept(words, REEL_FOREIGN_LIMIT, 1, notTaken),
    notTaken,
  })
}
