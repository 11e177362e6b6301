import { agreementOf } from '../agreement/agreementOf.ts'
import type { Cue, Reel } from '../job/job.ts'
import { formatSeconds } from '../time/duration.ts'
import { type Html, html } from './html.ts'
import type { ReportFacts } from './reportFacts.ts'
import { countText } from './reportWords.ts'

const cueCount = (count: number): string => `${countText(count)} ${count === 1 ? 'cue' : 'cues'}`

/** How the reel stands: how many cues are inside, agreed, open, changed since. */
export const summarySection = (
  { job, cues: facts }: ReportFacts,
  reel: Reel,
  cues: readonly Cue[],
): Html => {
  const count = (holds: (cue: Cue) => boolean): number => cues.filter(holds).length
  const stands = (wanted: ReturnType<typeof agreementOf>) =>
    count((cue) => agreementOf(job, cue) === wanted)
  const inside = count(({ id }) => facts.get(id)?.verdict?.isInside === true)
  const outside = count(({ id }) => facts.get(id)?.verdict?.isInside === false)
  const rows: readonly (readonly [words: string, count: number])[] = [
    ['Inside the tolerance', inside],
    ['Outside the tolerance', outside],
    ['Not measured', cues.length - inside - outside],
    ['Agreed', stands('agreed')],
    ['Open', stands('open')],
    ['Changes asked', stands('asked')],
    ['Changed since agreed', stands('changed')],
  ]
  return html`<section aria-labelledby="stands">
<h2 id="stands">How the reel stands</h2>
<p>${cueCount(cues.length)} on ${countText(reel.frames)} frames, ${formatSeconds(reel.frames, reel.rate)}.</p>
<dl class="tally">${rows.map(([words, each]) => html`<div><dt>${words}</dt><dd>${countText(each)}</dd></div>`)}</dl>
</section>
`
}
