import type { Reel } from '../job/job.ts'
import { CHECKLIST_TITLES, type Override } from '../transfer/override.ts'
import type { PassRecord } from '../transfer/passRecord.ts'
import { TRANSFER_FORMAT_FACTS, type TransferSettings } from '../transfer/transferSettings.ts'
import { type Html, html, written } from './html.ts'
import type { ReportFacts } from './reportFacts.ts'
import { countText } from './reportWords.ts'
import { terms } from './scanSection.ts'

const LIMITING = {
  none: 'not limited',
  soft: 'limited softly to the tolerance',
  hard: 'limited hard to the tolerance',
} as const

const settingsText = ({
  format,
  limiting,
  burnsTimecode,
  head: { bars, slate, leader },
  onDamage,
  carriesSound,
}: TransferSettings): string =>
  [
    TRANSFER_FORMAT_FACTS[format].title,
    LIMITING[limiting],
    burnsTimecode ? 'timecode burnt in' : 'nothing burnt in',
    bars + slate + leader === 0
      ? 'no head'
      : `head: ${bars} s of bars, ${slate} s of slate, ${leader} s of leader`,
    carriesSound ? 'sound asked for' : 'no sound asked for',
    onDamage === 'hold' ? 'damaged frames held' : 'stopped at damaged frames',
  ].join('; ')

const MARKS = { right: '●', wrong: '▲', told: '○', 'not known': '◌' } as const

const reasons = (overrides: readonly Override[]): Html =>
  html`<ul>${overrides.map(
    ({ check, found, reason, at }) =>
      html`<li>${CHECKLIST_TITLES[check]}: ${written(found)} Passed with the reason “${written(reason)}”, ${at.slice(0, 10)}.</li>`,
  )}</ul>`

/** Held frames that are listed, at most. */
const MOST_LISTED = 200

const passBlock = (pass: PassRecord): Html => {
  const { id, output, findings, overrides, heldFrames, madeWith, begunAt, endedAt } = pass
  const listed = heldFrames.slice(0, MOST_LISTED).join(', ')
  const more = heldFrames.length > MOST_LISTED ? ` and ${heldFrames.length - MOST_LISTED} more` : ''
  return html`<article class="cue" aria-labelledby="${id}">
<h3 id="${id}">${written(output.name)} <span class="places">${endedAt.slice(0, 16).replace('T', ' ')} UTC</span></h3>
${terms([
  ['Settings', settingsText(pass.settings)],
  ['Made', html`from ${begunAt} to ${endedAt}, by ${written(madeWith)}`],
  [
    'Output',
    `${countText(output.frames)} frames in ${countText(output.files)} ${output.files === 1 ? 'file' : 'files'}, ${countText(output.bytes)} bytes`,
  ],
  ['SHA-256', output.sha256],
  ['Values', `SHA-256 ${pass.decided} of all that decided the pictures`],
  ['Scan', pass.scan === null ? 'its checksum was not taken' : `SHA-256 ${pass.scan}`],
  ...(heldFrames.length > 0
    ? [['Held', `frames that could not be decoded show the one before: ${listed}${more}`] as const]
    : []),
])}<ul>${findings.map(
    ({ check, standing, says }) =>
      html`<li>${MARKS[standing]} ${check}, ${standing}: ${written(says)}</li>`,
  )}</ul>${overrides.length > 0 ? reasons(overrides) : undefined}</article>
`
}

/** The passes made of a reel and what was found in them, with line-ups; nothing where there are none. */
export const passesSection = ({ job }: ReportFacts, reel: Reel): Html | undefined => {
  const passes = Object.values<PassRecord>(job.passes)
    .filter((each) => each.reel === reel.id)
    .toSorted((a, b) => (a.endedAt < b.endedAt ? -1 : 1))
  const { lineUps, overrides } = reel
  if (passes.length + lineUps.length + overrides.length === 0) return undefined
  return html`<section aria-labelledby="passes">
<h2 id="passes">Transfers</h2>
${
  lineUps.length > 0
    ? html`<h3>Line-ups of the scanner</h3><ul>${lineUps.map(
        ({ at, says }) => html`<li>${at.slice(0, 10)}: ${written(says)}</li>`,
      )}</ul>`
    : undefined
}${
  overrides.length > 0
    ? html`<h3>Reasons given on the checklist</h3>${reasons(overrides)}`
    : undefined
}${passes.map(passBlock)}</section>
`
}
