import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { metresOf } from '../film/filmLength.ts'
import { runningTimes } from '../film/runningTimes.ts'
import { soundOffset } from '../film/soundOffset.ts'
import type { Job, Reel } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { formatFootage } from '../time/footage.ts'
import { cautionsSection } from './cautionsSection.ts'
import { filmSection } from './filmSection.ts'
import { type Html, html, written } from './html.ts'
import { reportPage } from './reportPage.ts'
import { countText, fixedText, numberText } from './reportWords.ts'
import { terms } from './scanSection.ts'

/** Seconds that frames of sound take are told to this many places. */
const PLACES = 3

const nominalSound = ({ gauge, particulars: { sound } }: Reel): string => {
  if (sound === 'unknown' || sound === 'mute') return 'none to be looked for'
  const offset = soundOffset(gauge, sound)
  if (!offset) return 'not known for this gauge; measure it on the film'
  const frames = numberText(Math.abs(offset.frames))
  const where =
    offset.frames === 0 ? 'level' : `${frames} frames ${offset.frames > 0 ? 'ahead' : 'behind'}`
  return `${where} (${offset.standing}: ${offset.source}); read it on the film itself`
}

const lengthSection = (reel: Reel): Html => {
  const speed = reel.particulars.speed ?? reel.rate
  return html`<section class="whole" aria-labelledby="length">
<h2 id="length">Length and running time</h2>
${terms([
  [
    'Length',
    `${countText(reel.frames)} frames, ${formatFootage(reel.frames, reel.gauge)}, ${fixedText(metresOf(reel.frames, reel.gauge), 1)} m`,
  ],
  ['Sound lies', nominalSound(reel)],
])}<table class="numbers">
<thead><tr><th scope="col">Frames a second</th><th scope="col">Runs</th><th scope="col">Feet a minute</th></tr></thead>
<tbody>${runningTimes(reel.frames, reel.gauge, speed).map(
    ({ words, time, feetPerMinute }) =>
      html`<tr><th scope="row">${words}</th><td>${time}</td><td>${fixedText(feetPerMinute, PLACES)}</td></tr>`,
  )}</tbody>
</table>
</section>
`
}

const lineUpSection = ({ lineUps }: Reel): Html | undefined =>
  lineUps.length === 0
    ? undefined
    : html`<section aria-labelledby="line-ups">
<h2 id="line-ups">Line-ups of the scanner</h2>
<ul>${lineUps.map(({ at, says }) => html`<li>${at.slice(0, 10)}: ${written(says)}</li>`)}</ul>
</section>
`

const SIGNED = html`<section class="whole" aria-labelledby="signed">
<h2 id="signed">Inspected by</h2>
<table class="list"><thead><tr><th scope="col">Name</th><th scope="col">Date</th><th scope="col">Signature</th></tr></thead>
<tbody><tr><td>&nbsp;</td><td>&nbsp;</td><td>&nbsp;</td></tr></tbody></table>
</section>
`

/**
 * The inspection report of a reel as one page of HTML, to be printed and laid into the can. Refuses
 * a reel that is not in the job. `madeOn` is today in words.
 */
export const inspectionHtml = (job: Job, id: ReelId, madeOn: string): Result<string> => {
  const reel = job.reels[id]
  if (!reel) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  const { title } = job.info.job
  const header = html`<h1>${written(reel.name)}</h1>
<p class="under">Inspection of the film${title === '' ? '' : html` for ${written(title)}`}, written by Reelwright on ${madeOn}</p>
`
  const main = [
    filmSection(reel),
    lengthSection(reel),
    lineUpSection(reel),
    SIGNED,
    cautionsSection(),
  ]
  return ok(reportPage(`${reel.name}: inspection`, header, main))
}
