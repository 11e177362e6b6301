import type { HeldFrame, Reel } from '../job/job.ts'
import { framingText, gradeText } from './cueParts.ts'
import { type Html, html, written } from './html.ts'
import type { ReportFacts } from './reportFacts.ts'
import { timecodeOf } from './reportWords.ts'
import { terms } from './scanSection.ts'

const heldBlock = ({ held: pictures }: ReportFacts, reel: Reel, held: HeldFrame): Html => {
  const picture = pictures.get(held.id)
  const label = timecodeOf(reel, held.frame)
  return html`<article class="cue" aria-labelledby="held-${held.id}">
<h3 id="held-${held.id}">${written(held.name)} <span class="places">${label}</span></h3>
${picture ? html`<div class="pair"><figure><img src="${picture}" alt="The frame at ${label} as it was held"></figure></div>` : undefined}${terms(
  [
    ['Grade', gradeText(held.grade)],
    ['Framing', framingText(held.framing)],
  ],
)}</article>
`
}

/** The frames held as references; nothing where there are none. */
export const heldSection = (facts: ReportFacts, reel: Reel): Html | undefined => {
  const held = Object.values<HeldFrame>(facts.job.held)
    .filter((each) => each.reel === reel.id)
    .toSorted((a, b) => a.frame - b.frame)
  return held.length === 0
    ? undefined
    : html`<section aria-labelledby="held">
<h2 id="held">Held frames</h2>
<p>Frames kept as references, as they were graded and framed when they were kept.</p>
${held.map((each) => heldBlock(facts, reel, each))}</section>
`
}
