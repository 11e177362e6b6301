import type { PackContents } from '../core/agreement/pack/packContents.ts'
import { answerFileOf } from './answerOf.ts'
import { type DraftBook, draftOf } from './draft.ts'
import { button, element } from './element.ts'

/** A name a file can have anywhere. */
const fileName = (words: string): string =>
  words
    .replace(/[^\p{L}\p{N} _-]+/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim()
    .slice(0, 100) || 'answer'

const download = (name: string, text: string): void => {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }))
  const link = element('a', { href: address, download: name })
  document.body.append(link)
  link.click()
  link.remove()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}

/** Why the answer cannot be sent yet; undefined where it can. */
const hindrance = (contents: PackContents, book: DraftBook): string | undefined => {
  const { name } = book.get()
  const isSilent = contents.cues.every(({ cue }) => !draftOf(book.get(), cue).says)
  if (isSilent) return 'Say something of at least one picture first.'
  return name.trim() === '' ? 'Write your name at the top first.' : undefined
}

/** The end of the page: the answer saved as a file, or shown as text for a mail. */
export const sendingPart = (contents: PackContents, book: DraftBook) => {
  const told = element('p', { role: 'status' })
  const textId = 'answer-text'
  const area = element('textarea', { id: textId, readonly: true, rows: '8' })
  const shown = element(
    'div',
    { class: 'note', hidden: true },
    element('label', { for: textId }, 'Copy all of this into a mail'),
    area,
  )
  const answer = async (): Promise<string> =>
    JSON.stringify(await answerFileOf(contents, book.get()), undefined, 1)
  const unsigned = (text: string): string =>
    contents.key && text.includes('"signature": null')
      ? ' This browser could not sign it; it can be taken in all the same.'
      : ''
  const save = button('Save the answer', () => {
    void answer().then((text) => {
      const name = `${fileName(`${contents.title} answer ${book.get().name}`)}.json`
      download(name, text)
      book.saved()
      told.textContent = `Saved as “${name}”: send that file back.${unsigned(text)}`
    })
  })
  const show = button('Show it as text', () => {
    void answer().then((text) => {
      area.value = text
      shown.hidden = false
      area.focus()
      area.select()
      book.saved()
      told.textContent = `Copy it and send it back.${unsigned(text)}`
    })
  })
  const waits = element('p', { class: 'dim' })
  const root = element(
    'section',
    { class: 'sending', 'aria-labelledby': 'sending' },
    element('h2', { id: 'sending' }, 'Send the answer back'),
    element('div', { class: 'tools' }, save, show),
    waits,
    told,
    shown,
  )
  return {
    root,
    update: (): void => {
      const why = hindrance(contents, book)
      save.disabled = why !== undefined
      show.disabled = why !== undefined
      const kept = book.isKept()
        ? 'What you say is kept in this browser until you are done.'
        : 'This browser keeps nothing: save the answer before you close the page.'
      waits.textContent = why ? `${why} ${kept}` : kept
      if (!book.get().isSaved) told.textContent = ''
    },
  }
}
