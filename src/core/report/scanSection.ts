import type { Reel, StatedBy } from '../job/job.ts'
import { formatFootage } from '../time/footage.ts'
import { GAUGE_WORDS } from '../time/gaugeWords.ts'
import { framesPerSecond } from '../time/rate.ts'
import { type Html, type HtmlPart, html, written } from './html.ts'
import type { ReportFacts } from './reportFacts.ts'
import { countText, numberText, timecodeOf } from './reportWords.ts'

const MATRICES = { bt601: 'BT.601', bt709: 'BT.709', bt2020: 'BT.2020' } as const

const RANGES = {
  narrow: 'narrow (black and peak at 10-bit codes 64 and 940)',
  full: 'full (black and peak at the lowest and highest code)',
} as const

const statedBy = (by: StatedBy): string => (by === 'file' ? 'the file states it' : 'stated by hand')

/** Terms and what is said of each. */
export const terms = (rows: readonly (readonly [term: string, says: HtmlPart])[]): Html =>
  html`<dl class="terms">${rows.map(([term, says]) => html`<div><dt>${term}</dt><dd>${says}</dd></div>`)}</dl>
`

const checksumRow = ({ scan }: ReportFacts): readonly [string, HtmlPart] => {
  if (!scan) return ['SHA-256', 'not worked out for this report']
  const value = html`<code class="checksum">${scan.sha256}</code>`
  if (scan.files === 1) return ['SHA-256', value]
  const says = `of the list of the checksums of its ${countText(scan.files)} files: a line each, checksum, two spaces and name, ordered by name`
  return ['SHA-256', html`${value}, ${says}`]
}

/** The particulars of the reel and of its scan. */
export const scanSection = (facts: ReportFacts, reel: Reel): Html => {
  const { media, rate } = reel
  const layout =
    media.layout === 'rgb' ? 'R′G′B′' : `Y′CbCr 4:${media.layout[1]}:${media.layout[2]}`
  return html`<section aria-labelledby="scan">
<h2 id="scan">The reel and its scan</h2>
${terms([
  ['Reel', written(reel.name)],
  ['Gauge', GAUGE_WORDS[reel.gauge]],
  ['Length', `${countText(reel.frames)} frames, ${formatFootage(reel.frames, reel.gauge)}`],
  [
    'Rate',
    `${numberText(framesPerSecond(rate))} frames a second${rate.den === 1 ? '' : ` (${rate.num}/${rate.den})`}; ${statedBy(media.rateBy)}`,
  ],
  [
    'Timecode',
    `from ${timecodeOf(reel, 0)}, ${reel.isDropFrame ? 'drop-frame' : 'non-drop-frame'} counting`,
  ],
  ['File', written(media.name)],
  ['Size', `${countText(media.bytes)} bytes`],
  checksumRow(facts),
  [
    'Coded as',
    html`${written(media.codec)} in ${written(media.container)}, ${layout}, ${media.depth} bits`,
  ],
  [
    'Picture',
    `${media.width} × ${media.height} pixels, shown ${numberText(Number(media.displayAspect.toFixed(3)))} : 1`,
  ],
  ...(media.layout === 'rgb'
    ? []
    : [['Luma equation', `${MATRICES[media.matrix]}; ${statedBy(media.matrixBy)}`] as const]),
  ['Range of codes', `${RANGES[media.range]}; ${statedBy(media.rangeBy)}`],
])}</section>
`
}
