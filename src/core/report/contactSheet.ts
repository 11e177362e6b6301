import { agreementOf } from '../agreement/agreementOf.ts'
import { cueEnd } from '../job/cueList.ts'
import type { Cue, Job, Reel } from '../job/job.ts'
import { formatSeconds } from '../time/duration.ts'
import { formatFootage } from '../time/footage.ts'
import {
  boundaryText,
  framingText,
  gradeTable,
  gradeText,
  measuredText,
  rampText,
} from './cueParts.ts'
import { type Html, type HtmlPart, html, written } from './html.ts'
import { type FramePictures, MOST_PICTURED, type ReportFacts } from './reportFacts.ts'
import { AGREEMENT_TEXT, countText, numberText, timecodeOf } from './reportWords.ts'
import { terms } from './scanSection.ts'

const pair = ({ frame, scanned, graded }: FramePictures, number: number, reel: Reel): Html => {
  const label = timecodeOf(reel, frame)
  return html`<div class="pair"><figure><img src="${scanned}" alt="Cue ${number} at ${label} as scanned"><figcaption>Scanned</figcaption></figure><figure><img src="${graded}" alt="Cue ${number} at ${label} as graded and framed"><figcaption>Graded, ${label}</figcaption></figure></div>
`
}

const alternatesPart = ({ alternates }: Cue): HtmlPart =>
  html`<ul>${alternates.map(
    ({ name, grade }) =>
      html`<li>${name === '' ? 'unnamed' : written(name)}: ${gradeText(grade)}</li>`,
  )}</ul>`

const SAYS = { agreed: 'agreed', asked: 'asked for changes', open: 'opened again' } as const

/** How a cue stands, and everything that was said of it, the first first. */
const agreementPart = (job: Job, cue: Cue, reel: Reel): HtmlPart => {
  const standing = AGREEMENT_TEXT[agreementOf(job, cue)]
  if (cue.answers.length === 0) return standing
  const said = cue.answers.map(
    ({ says, by, at, note, alternate, marks, frame, sha256, signature }) =>
      html`<li>${
        by === '' ? 'At the job' : written(by)
      } ${SAYS[says]}${at === null ? ', time not kept' : ` ${at.slice(0, 16).replace('T', ' ')} UTC`}${
        alternate === null ? '' : html`, with the alternate “${written(alternate)}”`
      }${note === '' ? '' : html`: “${written(note)}”`}${
        marks.length === 0 || frame === null
          ? ''
          : `, with ${marks.length === 1 ? 'a line' : `${marks.length} lines`} drawn at ${timecodeOf(reel, frame)}`
      }. Pictures ${sha256}${signature === null ? '' : ', signed'}.</li>`,
  )
  return html`${standing}<ul>${said}</ul>`
}

const cueBlock = (
  facts: ReportFacts,
  reel: Reel,
  cues: readonly Cue[],
  cue: Cue,
  index: number,
): Html => {
  const { pictures, verdict } = facts.cues.get(cue.id) ?? {}
  const number = index + 1
  const end = cueEnd(cues, index, reel.frames)
  const places = `${timecodeOf(reel, cue.first)} to ${timecodeOf(reel, end)}`
  return html`<article class="cue" aria-labelledby="cue-${number}">
<div class="head"><h3 id="cue-${number}">Cue ${number} <span class="places">${places}</span></h3><p class="length">${formatSeconds(end - cue.first, reel.rate)}, ${countText(end - cue.first)} frames from frame ${countText(cue.first)}, ${formatFootage(cue.first, reel.gauge)}</p></div>
<div class="${pictures ? 'beside' : 'alone'}">
${pictures ? pair(pictures, number, reel) : undefined}<div class="grade">
${gradeTable(cue.grade, `Grade of cue ${number}`)}<p>Saturation ${numberText(cue.grade.saturation)}</p>
</div>
</div>
${terms([
  ['Framing', framingText(cue.framing)],
  ['Takes over', `${rampText(cue)}; ${boundaryText(cue.boundary)}`],
  ['Tolerance', measuredText(verdict, reel)],
  ['Agreement', agreementPart(facts.job, cue, reel)],
  ...(cue.scene === '' ? [] : [['Scene', written(cue.scene)] as const]),
  ...(cue.gradeName === '' ? [] : [['Grade in force', written(cue.gradeName)] as const]),
  ...(cue.alternates.length === 0 ? [] : [['Alternates', alternatesPart(cue)] as const]),
  ...(cue.note === '' ? [] : [['Note', written(cue.note)] as const]),
])}</article>
`
}

const picturesText = (pictured: number, cues: number): string => {
  if (pictured === 0) return 'There are no pictures, as the scan was not at hand.'
  const shown =
    'Each cue is shown by the middle one of its frames past its ramp, as scanned (after the base) and as graded and framed. The pictures are small copies to know the cues by, not to judge a grade by.'
  if (pictured === cues) return shown
  return `${shown} ${countText(pictured)} of ${countText(cues)} cues have pictures${pictured >= MOST_PICTURED ? ', the most a report holds' : '; the frames of the others could not be read'}.`
}

/** Every cue with its pictures, all its numbers and its words. */
export const contactSheet = (facts: ReportFacts, reel: Reel, cues: readonly Cue[]): Html => {
  const pictured = cues.filter(({ id }) => facts.cues.get(id)?.pictures).length
  return html`<section aria-labelledby="sheet">
<h2 id="sheet">Contact sheet</h2>
<p>${picturesText(pictured, cues.length)}</p>
${cues.map((cue, index) => cueBlock(facts, reel, cues, cue, index))}</section>
`
}
