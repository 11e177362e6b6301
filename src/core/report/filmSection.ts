import { filmCautions } from '../film/filmCautions.ts'
import { speedWords } from '../film/runningTimes.ts'
import type { Reel } from '../job/job.ts'
import { formatFootage } from '../time/footage.ts'
import { FILM_WORDS } from './filmWords.ts'
import { type Html, type HtmlPart, html, written } from './html.ts'
import { countText, numberText, timecodeOf } from './reportWords.ts'
import { terms } from './scanSection.ts'

const NOT_MEASURED = 'not measured'

const soundText = ({ particulars: { sound, soundAhead } }: Reel): string => {
  if (soundAhead === null) return FILM_WORDS.sound[sound]
  const frames = `${numberText(Math.abs(soundAhead))} frames`
  const where =
    soundAhead === 0 ? 'level with' : `${frames} ${soundAhead > 0 ? 'ahead of' : 'behind'}`
  return `${FILM_WORDS.sound[sound]}, ${where} its picture as measured on the film`
}

const guideRow = (reel: Reel): readonly (readonly [string, HtmlPart])[] => {
  const { guide } = reel
  if (!guide) return []
  const { name, madeFor, mark } = guide
  const words = `, made for ${speedWords(madeFor)} frames a second; what is heard at ${numberText(mark.seconds)} s belongs to ${timecodeOf(reel, mark.frame)}`
  return [['Guide track', html`${written(name)}${words}`]]
}

const orNone = (words: string): HtmlPart => (words === '' ? 'none noted' : written(words))

const percent = (part: number): string => `${numberText(Number((100 * part).toFixed(3)))} %`

/** What was found in the can. */
const filmTerms = (reel: Reel): Html => {
  const { particulars: film } = reel
  const { degree } = FILM_WORDS
  return terms([
    ['Element', `${FILM_WORDS.element[film.element]}; ${FILM_WORDS.colouring[film.colouring]}`],
    ['Film base', FILM_WORDS.support[film.support]],
    ['Shrinkage', film.shrinkage === null ? NOT_MEASURED : percent(film.shrinkage)],
    ['Vinegar', degree[film.vinegar]],
    ['Perforations', `damage: ${degree[film.perforations]}`],
    ['Fading', degree[film.fading]],
    ['Mould', degree[film.mould]],
    ['Splices', film.splices === null ? 'not counted' : countText(film.splices)],
    ['Sound', soundText(reel)],
    ['Made for', film.speed === null ? 'not known' : `${speedWords(film.speed)} frames a second`],
    ['Aspect', film.aspect === null ? 'not known' : `${numberText(film.aspect)} : 1`],
    ...guideRow(reel),
    ['Leader', orNone(film.leader)],
    ['Edge numbers', orNone(film.edgeNumbers)],
    ['Notes', orNone(film.notes)],
  ])
}

const marksTable = (reel: Reel): Html | undefined =>
  reel.particulars.marks.length === 0
    ? undefined
    : html`<h3>By frame</h3>
<table class="list">
<thead><tr><th scope="col">Frame</th><th scope="col">Footage</th><th scope="col">Timecode</th><th scope="col">What</th><th scope="col">Words</th></tr></thead>
<tbody>${reel.particulars.marks.map(
        ({ frame, kind, says }) =>
          html`<tr><th scope="row">${frame}</th><td>${formatFootage(frame, reel.gauge)}</td><td>${timecodeOf(reel, frame)}</td><td>${FILM_WORDS.mark[kind]}</td><td>${written(says)}</td></tr>`,
      )}</tbody>
</table>
`

/** The film as it lay in the can, with what to beware of. */
export const filmSection = (reel: Reel): Html => {
  const cautions = filmCautions(reel.particulars)
  return html`<section aria-labelledby="film">
<h2 id="film">The film</h2>
${filmTerms(reel)}${cautions.length > 0 ? html`<ul>${cautions.map((each) => html`<li>▲ ${each}</li>`)}</ul>` : undefined}${marksTable(reel)}</section>
`
}
