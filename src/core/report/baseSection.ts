import { IDENTITY_MATRIX3, sameMatrix3 } from '../colour/matrix3.ts'
import type { Triple } from '../colour/triple.ts'
import { type FilmBase, isPlainBase } from '../film/filmBase.ts'
import type { ProcessStep } from '../process/processList.ts'
import { type Html, html, written } from './html.ts'
import { countText, numberText } from './reportWords.ts'

/** Numbers for R, G and B, a row each. */
export const channelTable = (
  caption: string,
  rows: readonly (readonly [name: string, values: Triple])[],
  columns: readonly [string, string, string] = ['R', 'G', 'B'],
): Html => html`<table class="numbers"><caption>${caption}</caption>
<thead><tr><td></td>${columns.map((each) => html`<th scope="col">${each}</th>`)}</tr></thead>
<tbody>${rows.map(
  ([name, values]) =>
    html`<tr><th scope="row">${name}</th>${values.map((value) => html`<td>${numberText(value)}</td>`)}</tr>`,
)}</tbody></table>
`

const SCANS = {
  print: 'The scan shows a print, a picture as it is to be seen: its signal is taken as video.',
  'printing-density':
    'The scan is printing density in 10 bits: black at code 95, white at 685, 0.002 of density a code, of a negative of gamma 0.6. Density becomes light of the scene, and that becomes video by the transfer function of BT.709.',
  negative:
    'The scan shows a negative as it lies. Its density over the clear film, divided by the film’s gamma, is the exposure it had; that light becomes video by the transfer function of BT.709.',
} as const

const stepText = (step: ProcessStep): string => {
  switch (step.kind) {
    case 'cdl':
      return 'ASC CDL'
    case 'matrix':
      return 'matrix'
    case 'range':
      return 'range'
    case 'curve':
      return `curve of ${countText(step.points)} places`
    case 'cube':
      return `cube of ${step.points}³ places`
  }
}

const dyesPart = ({ dyes }: FilmBase): Html | undefined =>
  sameMatrix3(dyes, IDENTITY_MATRIX3)
    ? undefined
    : html`<p>Faded dyes are restored: the densities of R, G and B become these sums of them.</p>
${channelTable(
  'Dye restoration, by rows',
  [
    ['R is', dyes[0]],
    ['G is', dyes[1]],
    ['B is', dyes[2]],
  ],
  ['of R', 'of G', 'of B'],
)}`

/** The base, which makes video of the scan before any grade, with its numbers. */
export const baseSection = (base: FilmBase): Html => html`<section aria-labelledby="base">
<h2 id="base">The base</h2>
<p>${SCANS[base.scan]}${isPlainBase(base) ? ' The base changes nothing.' : undefined}</p>
${
  base.scan === 'negative'
    ? channelTable('The negative', [
        ['Density of clear film', base.clear],
        ['Gamma of the film', base.gamma],
      ])
    : undefined
}${dyesPart(base)}${
  base.list
    ? html`<p>After that the signal passes the process list ${written(base.list.name)}: ${base.list.steps.map(stepText).join(', ')}. Its numbers are in the job file.</p>
`
    : undefined
}</section>
`
