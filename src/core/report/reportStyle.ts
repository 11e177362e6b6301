/** How a report looks, on screen and on A4: black on white, achromatic round the pictures. */
export const REPORT_STYLE = `
:root { color-scheme: light; font-size: 15px; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 2rem 1.5rem 4rem; max-width: 68rem; background: #fff; color: #000;
  font: 1rem/1.45 system-ui, sans-serif; font-variant-numeric: tabular-nums; }
h1 { margin: 0; font-size: 1.9rem; line-height: 1.2; overflow-wrap: anywhere; }
h2 { margin: 2.4rem 0 0.6rem; padding-top: 0.5rem; border-top: 2px solid #000; font-size: 1.25rem;
  break-after: avoid; }
h3 { margin: 1.2rem 0 0.3rem; font-size: 1.05rem; break-after: avoid; overflow-wrap: anywhere; }
h4 { margin: 0.8rem 0 0.2rem; font-size: 1rem; break-after: avoid; }
p, ul, ol { margin: 0.4rem 0; max-width: 48rem; }
a { color: inherit; }
nav ul { display: flex; flex-wrap: wrap; gap: 0.3rem 1.2rem; margin: 1rem 0 0; padding: 0;
  list-style: none; max-width: none; }
code { font: 0.92em ui-monospace, monospace; white-space: nowrap; }
sup { line-height: 0; }
.checksum { white-space: normal; overflow-wrap: anywhere; }
.written { white-space: pre-wrap; overflow-wrap: anywhere; }
.under { margin: 0.3rem 0 0; color: #444; }
dl { margin: 0.5rem 0; }
dt { color: #444; }
dd { margin: 0; overflow-wrap: anywhere; }
.tally { display: flex; flex-wrap: wrap; gap: 0.4rem 2rem; }
.tally dd { font-size: 1.4rem; line-height: 1.2; }
.terms > div { display: grid; grid-template-columns: 9.5rem minmax(0, 1fr); gap: 0 0.8rem;
  padding: 0.08rem 0; }
.terms ul { margin: 0; padding-left: 1.1rem; }
table { border-collapse: collapse; margin: 0.6rem 0; }
caption { padding-bottom: 0.2rem; color: #444; text-align: left; font-size: 0.87rem; }
th, td { padding: 0.15rem 0.8rem 0.15rem 0; text-align: left; vertical-align: baseline;
  border-bottom: 1px solid #bbb; }
th { font-weight: 600; }
thead th, thead td { border-bottom: 1.5px solid #000; }
.numbers td, .numbers thead th:not(:first-child) { text-align: right; }
.list { width: 100%; font-size: 0.87rem; }
.label { white-space: nowrap; }
.wide { overflow-x: auto; }
.cue { padding: 0.4rem 0 0.9rem; border-bottom: 1px solid #bbb; }
.head { display: flex; flex-wrap: wrap; align-items: baseline; gap: 0 1.2rem; padding-bottom: 0.5rem; }
.head h3 { margin-bottom: 0; }
.places { padding-left: 0.6rem; font-weight: 400; }
.length { margin: 0; color: #444; }
.beside { display: grid; grid-template-columns: minmax(0, 2.3fr) minmax(14rem, 1fr); gap: 1.4rem; }
.pair { display: grid; grid-template-columns: 1fr 1fr; gap: 0.5rem; align-content: start; }
.cue > .pair { max-width: 46rem; }
figure { margin: 0; }
figure img { display: block; width: 100%; height: auto; background: #000; }
figcaption { padding-top: 0.15rem; color: #444; font-size: 0.87rem; }
.grade table { margin-top: 0; }
.grade caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
@media screen {
  .cue { content-visibility: auto; contain-intrinsic-size: auto 24rem; }
}
@media screen and (max-width: 44rem) {
  .beside { grid-template-columns: minmax(0, 1fr); }
}
@media print {
  @page { size: A4; margin: 14mm 14mm 18mm;
    @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt sans-serif; } }
  :root { font-size: 8.6pt; }
  body { padding: 0; max-width: none; line-height: 1.35; }
  nav { display: none; }
  a { text-decoration: none; }
  h2 { margin-top: 1.8rem; }
  tr, li, figure, .cue, .numbers, .whole, .terms > div { break-inside: avoid; }
  p, ul, ol { max-width: none; }
  p { break-inside: avoid; }
  h2 + p, caption, thead { break-after: avoid; }
  tbody tr:nth-child(-n + 3) { break-before: avoid; }
  .cue > .pair { max-width: 112mm; }
  thead { display: table-header-group; }
  .list th, .list td { padding-right: 2mm; }
  .tally { gap: 1mm 5mm; }
  .beside { grid-template-columns: 112mm minmax(0, 1fr); gap: 5mm; }
  .terms > div { grid-template-columns: 25mm minmax(0, 1fr); padding: 0; }
  .wide { overflow: visible; }
  .list .checksum { font-size: 0.8rem; }
}
`
