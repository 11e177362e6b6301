import type { Loss } from '../formats/loss.ts'
import { type Html, html, written } from './html.ts'
import type { ReportedList } from './reportFacts.ts'

const lossItem = ({ subject, says, done }: Loss): Html =>
  html`<li>${subject}: ${written(says)} ${written(done)}</li>`

const formatRows = ({ title, files }: ReportedList): readonly Html[] =>
  files.map(
    ({ name, sha256 }) =>
      html`<tr><th scope="row">${written(name)}</th><td>${title}</td><td><code class="checksum">${sha256}</code></td></tr>
`,
  )

/** The files handed over beside the report, and in short what they cannot carry. */
export const listsSection = (parts: readonly ReportedList[]): Html | undefined =>
  parts.length === 0
    ? undefined
    : html`<section aria-labelledby="files">
<h2 id="files">Lists to hand over</h2>
<p>The lists that this program makes of the reel as it stands, with their SHA-256: a file with another checksum was made of another state, or changed since. The job file loses nothing.</p>
<div class="wide"><table class="list"><caption>Files</caption>
<thead><tr><th scope="col">File</th><th scope="col">What it is</th><th scope="col">SHA-256</th></tr></thead>
<tbody>
${parts.flatMap(formatRows)}</tbody></table></div>
<h3>What they cannot carry</h3>
${parts.map(
  ({ title, losses }) =>
    html`<h4>${title}</h4>
${losses.length === 0 ? html`<p>Nothing is lost.</p>` : html`<ul>${losses.map(lossItem)}</ul>`}
`,
)}</section>
`
