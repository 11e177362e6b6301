import type { Limits, ToleranceProfile } from '../tolerance/profile.ts'
import { type Html, html, written } from './html.ts'
import { areaText, fixedText } from './reportWords.ts'

const percent = (level: number): string => `${fixedText(level * 100, 2)} %`

const codes = ([low, high]: Limits): string =>
  `${fixedText(64 + 876 * low, 0)} to ${fixedText(64 + 876 * high, 0)}`

const limitRow = (name: string, limits: Limits | null, hasCodes: boolean): Html =>
  limits
    ? html`<tr><th scope="row">${name}</th><td>${percent(limits[0])}</td><td>${percent(limits[1])}</td><td>${hasCodes ? codes(limits) : '–'}</td></tr>`
    : html`<tr><th scope="row">${name}</th><td colspan="3">not limited</td></tr>`

/** The tolerance the job is held to: its limits, and where they are from. */
export const toleranceSection = (
  profile: ToleranceProfile,
): Html => html`<section aria-labelledby="tolerance">
<h2 id="tolerance">The tolerance</h2>
<p>${written(profile.name)}. Source: ${written(profile.source)}.</p>
<table class="numbers"><caption>Limits, 0 % being black and 100 % nominal peak</caption>
<thead><tr><th scope="col">Signal</th><th scope="col">Lowest</th><th scope="col">Highest</th><th scope="col">10-bit codes</th></tr></thead>
<tbody>${limitRow('R′ G′ B′', profile.rgb, true)}${limitRow('Y′', profile.luma, true)}${limitRow('Luma plus chroma', profile.composite, false)}</tbody></table>
<p>Up to ${areaText(profile.area)} of the area of a frame may lie outside. Levels and area are taken ${profile.filtered ? 'after the spatial filter of EBU R 103 v3' : 'unfiltered'}, on every frame of the delivered picture, framed, with the black that framing leaves.</p>
</section>
`
