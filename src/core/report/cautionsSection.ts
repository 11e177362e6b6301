import { type Html, html } from './html.ts'

/** What whoever uses the report is told besides: the same in every one. */
export const cautionsSection = (): Html => html`<section class="whole" aria-labelledby="cautions">
<h2 id="cautions">Cautions</h2>
<ul>
<li>Levels measured here are not the broadcaster’s approved test. Before delivery, have the programme measured by the means that the broadcaster asks for.</li>
<li>A browser window is not a graded monitor. Judge pictures on a monitor lined up to the standard of the target, in the surround it asks for.</li>
<li>Pictures that flash, and regular patterns, can hurt viewers with photosensitive epilepsy. Nothing here takes the place of the broadcaster’s approved test for flashing pictures.</li>
<li>Old film can be nitrate, which burns fiercely and cannot be put out; it can also be brittle, shrunken or mouldy. Have it identified, stored, moved and handled by the local codes and by people licensed for it.</li>
<li>Scanners and projectors hold hot lamps, high voltage and moving parts. Follow the maker’s manual.</li>
<li>Cleaning fluids and solvents harm and some burn. Follow their safety data, the maker’s manual, local codes and licensed practice.</li>
</ul>
</section>
`
