import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { cuesOfReel } from '../job/cueList.ts'
import { profileById } from '../tolerance/findProfile.ts'
import { baseSection } from './baseSection.ts'
import { cautionsSection } from './cautionsSection.ts'
import { contactSheet } from './contactSheet.ts'
import { cueTable } from './cueTable.ts'
import { filmSection } from './filmSection.ts'
import { heldSection } from './heldSection.ts'
import { type Html, html, written } from './html.ts'
import { listsSection } from './listsSection.ts'
import { methodSection } from './methodSection.ts'
import { passesSection } from './passesSection.ts'
import type { ReportFacts } from './reportFacts.ts'
import { reportPage } from './reportPage.ts'
import { scanSection } from './scanSection.ts'
import { summarySection } from './summarySection.ts'
import { toleranceSection } from './toleranceSection.ts'

const contents = (sections: readonly (readonly [id: string, words: string])[]): Html =>
  html`<nav aria-label="Parts of the report"><ul>${sections.map(
    ([id, words]) => html`<li><a href="#${id}">${words}</a></li>`,
  )}</ul></nav>
`

/**
 * The report of a reel as one page of HTML with its style and pictures inside, to be read on
 * screen and printed on A4. Refuses a reel that is not in the job, and a tolerance that is not
 * known.
 */
export const reportHtml = (facts: ReportFacts): Result<string> => {
  const { job, reelId, madeOn, lists } = facts
  const reel = job.reels[reelId]
  const { title, tolerance, profiles } = job.info.job
  const profile = profileById(tolerance, profiles)
  if (!reel) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  if (!profile)
    return fail(problem('not-found', `The tolerance “${tolerance}” is not known; choose another.`))
  const cues = cuesOfReel(job, reelId)
  const held = heldSection(facts, reel)
  const passes = passesSection(facts, reel)
  const listed = listsSection(lists)
  const header = html`<h1>${written(title === '' ? 'Untitled job' : title)}</h1>
<p class="under">Report of the reel ${written(reel.name)}, made by Reelwright on ${madeOn}</p>
${contents([
  ['stands', 'How the reel stands'],
  ['film', 'The film'],
  ['scan', 'The reel and its scan'],
  ['base', 'The base'],
  ['tolerance', 'The tolerance'],
  ['cues', 'The cues'],
  ['sheet', 'Contact sheet'],
  ...(held ? [['held', 'Held frames'] as const] : []),
  ...(passes ? [['passes', 'Transfers'] as const] : []),
  ['method', 'How to repeat the grades'],
  ...(listed ? [['files', 'Lists to hand over'] as const] : []),
  ['cautions', 'Cautions'],
])}`
  const sections = [
    summarySection(facts, reel, cues),
    filmSection(reel),
    scanSection(facts, reel),
    baseSection(reel.base),
    toleranceSection(profile),
    cueTable(facts, reel, cues),
    contactSheet(facts, reel, cues),
    held,
    passes,
    methodSection(cues),
    listed,
    cautionsSection(),
  ]
  return ok(reportPage(`${title}, ${reel.name}: report`, header, sections))
}
