import type { PackContents, PackCue } from '../core/agreement/pack/packContents.ts'
import { REVIEWER_LIMIT } from '../core/job/limits.ts'
import { type CueCard, cueCard } from './cueCard.ts'
import { type DraftBook, draftOf, openDraft } from './draft.ts'
import { button, element } from './element.ts'
import { sendingPart } from './sending.ts'

/** Cues one after another that share a scene mark; those without one stand together as well. */
const scenesOf = (cues: readonly PackCue[]): readonly (readonly PackCue[])[] => {
  const scenes: PackCue[][] = []
  for (const cue of cues) {
    const last = scenes.at(-1)
    if (last && last[0]?.scene === cue.scene) last.push(cue)
    else scenes.push([cue])
  }
  return scenes
}

const openOf = (book: DraftBook, cues: readonly PackCue[]) =>
  cues.filter(({ cue }) => draftOf(book.get(), cue).says === undefined).map(({ cue }) => cue)

const scenePart = (book: DraftBook, cues: readonly PackCue[], cards: readonly CueCard[]) => {
  const [first] = cues
  const hasMark = first !== undefined && first.scene !== ''
  const agree = button(
    hasMark ? 'Agree to the rest of this scene' : 'Agree to the rest of these',
    () => book.say(openOf(book, cues), { says: 'agreed' }),
  )
  const heading = element(
    'div',
    { class: 'scene-head' },
    element('h2', {}, hasMark ? `Scene ${first.scene}` : 'Pictures without a scene'),
    agree,
  )
  return {
    root: element('section', { class: 'scene' }, heading, ...cards.map(({ root }) => root)),
    update: (): void => {
      agree.disabled = openOf(book, cues).length === 0
    },
  }
}

/** Plays the cards one after another; pressed again it stops. */
const playButton = (cards: readonly CueCard[]) => {
  let playing: AbortController | undefined
  const playAll = async (signal: AbortSignal): Promise<void> => {
    for (const card of cards) {
      if (signal.aborted) return
      await card.play(signal)
    }
  }
  const made = button('Play it through', () => {
    if (playing) return playing.abort()
    const stop = new AbortController()
    playing = stop
    made.textContent = 'Stop playing'
    void playAll(stop.signal).finally(() => {
      playing = undefined
      made.textContent = 'Play it through'
    })
  })
  return made
}

/** The whole page of a review pack. */
export const reviewPage = (contents: PackContents): HTMLElement => {
  const book = openDraft(contents)
  const cards = contents.cues.map((cue) => cueCard(contents, cue, book))
  let from = 0
  const scenes = scenesOf(contents.cues).map((cues) => {
    const those = cards.slice(from, from + cues.length)
    from += cues.length
    return scenePart(book, cues, those)
  })
  const name = element('input', {
    id: 'reviewer',
    type: 'text',
    autocomplete: 'name',
    maxlength: String(REVIEWER_LIMIT),
    value: book.get().name,
    input: () => book.setName(name.value),
  })
  const decided = element('p', { role: 'status', class: 'decided' })
  const agreeAll = button('Agree to all the rest', () =>
    book.say(openOf(book, contents.cues), { says: 'agreed' }),
  )
  const sending = sendingPart(contents, book)
  const { title, reel, madeFor, madeAt } = contents
  const root = element(
    'div',
    { class: 'review' },
    element(
      'header',
      { class: 'top' },
      element('h1', {}, title),
      element(
        'p',
        { class: 'dim' },
        `${reel.name === title ? '' : `${reel.name}. `}${madeFor === '' ? 'Made' : `Made for ${madeFor}`} on ${madeAt.slice(0, 10)}. Look at each picture, say whether it is agreed or what should be otherwise, and send the answer back. Nothing leaves this page by itself.`,
      ),
      element('label', { for: 'reviewer' }, 'Your name'),
      name,
    ),
    element(
      'nav',
      { class: 'bar', 'aria-label': 'The whole reel' },
      decided,
      playButton(cards),
      agreeAll,
    ),
    element('main', {}, ...scenes.map((scene) => scene.root), sending.root),
  )
  const update = (): void => {
    const left = openOf(book, contents.cues).length
    const count = contents.cues.length
    decided.textContent = `${count - left} of ${count} answered`
    agreeAll.disabled = left === 0
    for (const each of [...cards, ...scenes]) each.update()
    sending.update()
  }
  book.listen(update)
  update()
  window.addEventListener('beforeunload', (event) => {
    if (!book.get().isSaved && !book.isKept()) event.preventDefault()
  })
  return root
}
