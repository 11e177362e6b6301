import { findJsonLines } from '../../base/json/findJsonLines.ts'
import { linePlaces } from '../../base/json/linePlaces.ts'
import { scanJson } from '../../base/json/scanJson.ts'
import type { Problem } from '../../base/problem.ts'
import { fail } from '../../base/result.ts'

const NO_EVENTS = {
  open: () => undefined,
  close: () => {},
  name: () => undefined,
  scalar: () => undefined,
}

/** The line on which a text stops being JSON; its last where it is. */
export const brokenLine = (text: string): number =>
  linePlaces(text)(scanJson(text, NO_EVENTS)?.at ?? text.length).line

/**
 * A refusal of a job file with the line of each problem's field. What an older file does not have
 * yet has the line of the record it would be in.
 */
export const withJobLines = (
  text: string,
  [first, ...rest]: readonly [Problem, ...Problem[]],
): ReturnType<typeof fail> => {
  const lines = findJsonLines(
    text,
    [first, ...rest].map(({ at }) => at?.field ?? ''),
  )
  const withLine = (each: Problem, index: number): Problem => ({
    ...each,
    at: { ...each.at, line: lines[index] ?? 1 },
  })
  return fail(withLine(first, 0), ...rest.map((each, index) => withLine(each, index + 1)))
}
