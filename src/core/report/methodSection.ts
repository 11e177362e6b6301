import { gradeToCdl } from '../colour/cdl.ts'
import {
  type Grade,
  gradeChannel,
  gradeColour,
  IDENTITY_GRADE,
  SATURATION_WEIGHTS,
  sameGrade,
} from '../colour/grade.ts'
import { mapTriple, type Triple } from '../colour/triple.ts'
import type { Cue } from '../job/job.ts'
import { channelTable } from './baseSection.ts'
import { gradeText } from './cueParts.ts'
import { type Html, html } from './html.ts'
import { isRounded, numberText } from './reportWords.ts'

/** The colour of the worked example, as video signal after the base. */
const EXAMPLE: Triple = [0.5, 0.4, 0.3]

/** The stages of a grade on one colour, worked out: what `methodSection` prints. */
export const workedGrade = (grade: Grade, signal: Triple) => {
  const { lift, gamma, gain } = grade
  const line = mapTriple(signal, (x, c) => lift[c] + (gain[c] - lift[c]) * x)
  const curved = mapTriple(signal, (x, c) => gradeChannel(x, lift[c], gamma[c], gain[c]))
  const luma = curved.reduce((sum, value, c) => sum + value * (SATURATION_WEIGHTS[c] ?? 0), 0)
  const graded = gradeColour(signal, grade)
  return { line, curved, luma, graded, codes: mapTriple(graded, (y) => Math.round(64 + 876 * y)) }
}

const workedExample = (cue: Cue, number: number): Html => {
  const { line, curved, luma, graded, codes } = workedGrade(cue.grade, EXAMPLE)
  const { slope, offset, power, saturation } = gradeToCdl(cue.grade)
  return html`<h3>Cue ${number}, worked out</h3>
<p>Its grade is ${gradeText(cue.grade)}. A place whose signal after the base is ${EXAMPLE.map(numberText).join(', ')} becomes:</p>
${channelTable(`A colour through the grade of cue ${number}`, [
  ['Signal x', EXAMPLE],
  ['v', line],
  ['y', curved],
  [`Out, with Y = ${numberText(luma)}`, graded],
  ['10-bit code, 64 + 876 · out', codes],
])}${channelTable(`The same grade as ASC CDL, saturation ${numberText(saturation)}`, [
  ['Slope', slope],
  ['Offset', offset],
  ['Power', power],
])}`
}

/** The cue that is worked out: the first whose grade does most kinds of things. */
const workedCue = (cues: readonly Cue[]): number => {
  const isGraded = ({ grade }: Cue) => !sameGrade(grade, IDENTITY_GRADE)
  const whole = cues.findIndex((cue) => isGraded(cue) && cue.grade.saturation !== 1)
  return whole >= 0 ? whole : Math.max(0, cues.findIndex(isGraded))
}

const hasRounded = ({ grade, framing }: Cue): boolean =>
  [...grade.lift, ...grade.gamma, ...grade.gain, grade.saturation, ...Object.values(framing)].some(
    isRounded,
  )

/** What the numbers mean, so that anyone can make the same picture, and one cue worked out. */
export const methodSection = (cues: readonly Cue[]): Html => {
  const index = workedCue(cues)
  const cue = cues[index]
  const [r, g, b] = SATURATION_WEIGHTS
  return html`<section aria-labelledby="method">
<h2 id="method">How to repeat the grades</h2>
<ol>
<li>Read the scan to non-linear R′G′B′ by the luma equation and range above: 0 is black, 1 is nominal peak. Keep what lies past them.</li>
<li>Apply the base above.</li>
<li>For each channel: <code>v = lift + (gain − lift) · x</code>, then <code>y = v<sup>1/gamma</sup></code> where v is above 0, else <code>y = v</code>. Lift is the black level and gain the peak white.</li>
<li>For saturation s: <code>Y = ${r} R + ${g} G + ${b} B</code>, <code>out = Y + s · (y − Y)</code>.</li>
<li>Frame the picture: zoom 2 shows its middle half; pan and tilt move the view right and down, in parts of its width and height; rotation turns the picture clockwise in degrees; squeeze is how many times wider than scanned it is shown; blanking is the part of the height that is black, half above and half below (below 0, of the width, at the sides). Read between pixels by Keys’ cubic convolution (a = −1/2), made as much wider as the picture is made smaller; edges repeated, black past half a pixel off the scan.</li>
<li>Encode to narrow-range Y′CbCr of the target standard: black at 10-bit code 64, peak at 940.</li>
</ol>
<p>Steps 3 and 4 are ASC CDL v1.2 without clamping: slope = gain − lift, offset = lift, power = 1/gamma.</p>
<p>Over a ramp of N frames all values pass from the cue before in N + 1 equal steps: frame k of the ramp, from 0, has gone t = (k + 1)/(N + 1) of the way; an eased ramp 3t² − 2t³.</p>
${cues.some(hasRounded) ? html`<p>Some numbers of this report are rounded to six decimals; the job file, the ASC CDL and the ledger as CSV have them exactly.</p>\n` : undefined}${cue ? workedExample(cue, index + 1) : undefined}</section>
`
}
