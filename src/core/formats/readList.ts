import { problem } from '../base/problem.ts'
import { fail, type Result } from '../base/result.ts'
import { readCdlList } from './cdl/readCdlList.ts'
import { readCsv } from './csv/readCsv.ts'
import type { DecisionList, ListTiming } from './decisionList.ts'
import { readEdl } from './edl/readEdl.ts'
import { readEdlForReel } from './edl/readEdlForReel.ts'
import { readOtio } from './otio/readOtio.ts'
import { sniffText } from './sniffText.ts'

/**
 * A list made elsewhere, whatever its format. `name` is that of its file, for what is said of it:
 * what it is is told by what is in it. `timing` is how the reel it is for counts time; undefined
 * where it is only looked over.
 */
export const readList = (
  name: string,
  text: string,
  timing: ListTiming | undefined,
): Result<DecisionList> => {
  switch (sniffText(text)) {
    case 'cdl':
      return readCdlList(text, timing)
    case 'edl':
      return timing ? readEdlForReel(text, timing) : readEdl(text, timing)
    case 'otio':
      return readOtio(text, timing)
    case 'csv':
      return readCsv(text, timing)
    case 'job':
      return fail(
        problem('wrong-use', `${name} is a job and no list; open it instead of importing it.`, {
          line: 1,
        }),
      )
    case 'clf':
      return fail(
        problem(
          'wrong-use',
          `${name} is a process list, which has one grade or base and no decisions; choose it as a base list.`,
          { line: 1 },
        ),
      )
    case undefined:
      return fail(
        problem(
          'unknown-format',
          `${name} is no list that is read here: ASC CDL (.cc, .ccc, .cdl), an edit decision list (.edl), OpenTimelineIO (.otio) or a ledger as CSV.`,
          { line: 1 },
        ),
      )
  }
}
