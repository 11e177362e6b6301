import { agreementOf } from '../agreement/agreementOf.ts'
import { cueEnd } from '../job/cueList.ts'
import type { Cue, Reel } from '../job/job.ts'
import { formatSeconds } from '../time/duration.ts'
import { formatFootage } from '../time/footage.ts'
import { type Html, html, written } from './html.ts'
import type { ReportFacts } from './reportFacts.ts'
import { AGREEMENT_TEXT, areaText, timecodeOf, verdictText } from './reportWords.ts'

const headings = (hasScenes: boolean): readonly string[] => [
  ...['Cue', 'In', 'Out', 'Duration', 'Footage'],
  ...(hasScenes ? ['Scene'] : []),
  ...['Tolerance', 'Area out', 'Agreement'],
]

/** Every cue of the reel in a row. */
export const cueTable = (facts: ReportFacts, reel: Reel, cues: readonly Cue[]): Html => {
  const hasScenes = cues.some(({ scene }) => scene !== '')
  const row = (cue: Cue, index: number): Html => {
    const end = cueEnd(cues, index, reel.frames)
    const verdict = facts.cues.get(cue.id)?.verdict
    return html`<tr><th scope="row"><a href="#cue-${index + 1}">${index + 1}</a></th><td class="label">${timecodeOf(reel, cue.first)}</td><td class="label">${timecodeOf(reel, end)}</td><td class="label">${formatSeconds(end - cue.first, reel.rate)}</td><td class="label">${formatFootage(cue.first, reel.gauge)}</td>${hasScenes ? html`<td>${cue.scene === '' ? undefined : written(cue.scene)}</td>` : undefined}<td class="label">${verdictText(verdict)}</td><td class="label">${verdict ? areaText(verdict.areaOutside) : '–'}</td><td class="label">${AGREEMENT_TEXT[agreementOf(facts.job, cue)]}</td></tr>
`
  }
  return html`<section aria-labelledby="cues">
<h2 id="cues">The cues</h2>
<p>Out is the first frame after the cue. Footage is that of the cue’s first frame from the head of the reel. Area out is the part of the worst frame that lies outside.</p>
<div class="wide"><table class="list"><caption>Cues of the reel, in order</caption>
<thead><tr>${headings(hasScenes).map((each) => html`<th scope="col">${each}</th>`)}</tr></thead>
<tbody>
${cues.map(row)}</tbody></table></div>
</section>
`
}
