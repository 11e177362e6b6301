import type { PackAlternate, PackContents, PackCue } from '../core/agreement/pack/packContents.ts'
import { WORDS_LIMIT } from '../core/job/limits.ts'
import { type DraftBook, draftOf } from './draft.ts'
import { drawingSheet } from './drawing.ts'
import { button, element } from './element.ts'

export type CueCard = {
  readonly root: HTMLElement
  readonly update: () => void
  /** Shows the graded pictures for as long as the cue is, or till `signal` stops it. */
  readonly play: (signal: AbortSignal) => Promise<void>
}

const SIGNS = { agreed: '✓ agreed', asked: '✎ changes asked' } as const

/** A still stands for a long cue no longer than this when the reel is played through. */
const LONGEST_STILL_S = 4

const waited = (seconds: number, signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    const timer = setTimeout(resolve, seconds * 1000)
    signal.addEventListener('abort', () => {
      clearTimeout(timer)
      resolve()
    })
  })

const details = ({ number, timecode, seconds, sha256 }: PackCue): HTMLElement => {
  const rows: readonly (readonly [string, string])[] = [
    ['Cue', String(number)],
    ['Timecode', timecode],
    ['Length', `${seconds.toFixed(1)} s`],
    ['SHA-256 of all that decides its pictures', sha256],
  ]
  return element(
    'details',
    {},
    element('summary', {}, 'Numbers'),
    element(
      'dl',
      {},
      ...rows.flatMap(([name, value]) => [element('dt', {}, name), element('dd', {}, value)]),
    ),
  )
}

/** One cue: its pictures before and after with a wipe, and what is said of it. */
export const cueCard = (contents: PackContents, cue: PackCue, book: DraftBook): CueCard => {
  const name = `Picture ${contents.cues.indexOf(cue) + 1}`
  const ids = { note: `note-${cue.cue}`, wipe: `wipe-${cue.cue}`, title: `title-${cue.cue}` }
  const said = () => draftOf(book.get(), cue.cue)
  const say = (change: Parameters<DraftBook['say']>[1]): void => book.say([cue.cue], change)
  /** Words and lines without a decision ask for something. */
  const ask = (change: Parameters<DraftBook['say']>[1]): void =>
    say(said().says ? change : { ...change, says: 'asked' })

  const after = element('img', { class: 'after', alt: `${name}, graded`, src: cue.after })
  const before = element('img', {
    class: 'before',
    alt: `${name}, as it is on the film`,
    src: cue.before,
  })
  after.addEventListener('load', () =>
    picture.style.setProperty('--aspect', String(after.naturalWidth / after.naturalHeight)),
  )
  const edge = element('span', { class: 'edge', 'aria-hidden': 'true' })
  const drawing = drawingSheet(
    () => said().marks,
    (marks) => ask({ marks }),
  )
  const picture = element('div', { class: 'picture' }, after, before, edge)
  picture.append(drawing.sheet)
  const wipe = element('input', {
    type: 'range',
    id: ids.wipe,
    min: '0',
    max: '100',
    value: '0',
    input: () => showWipe(),
  })
  const showWipe = (): void => {
    picture.style.setProperty('--wipe', `${wipe.value}%`)
    wipe.setAttribute('aria-valuetext', `${wipe.value} % of the width is the film before grading`)
  }
  const setWipe = (value: number): void => {
    wipe.value = String(value)
    showWipe()
  }
  const wiping = element(
    'div',
    { class: 'wipe' },
    element('label', { for: ids.wipe }, 'Before and after'),
    button('after', () => setWipe(0)),
    wipe,
    button('before', () => setWipe(100)),
  )

  const agreed = button(SIGNS.agreed, () =>
    say({ says: said().says === 'agreed' ? undefined : 'agreed' }),
  )
  const asked = button(SIGNS.asked, () =>
    say({ says: said().says === 'asked' ? undefined : 'asked' }),
  )
  const note = element('textarea', {
    id: ids.note,
    rows: '2',
    maxlength: String(WORDS_LIMIT),
    input: () => ask({ note: note.value }),
  })
  const noteField = element(
    'div',
    { class: 'note' },
    element('label', { for: ids.note }, 'What should be otherwise, or anything else to say'),
    note,
  )

  const choices = [undefined, ...cue.alternates].map((alternate) =>
    alternateChoice(cue, alternate, () => say({ alternate: alternate?.name })),
  )
  const others =
    cue.alternates.length === 0
      ? undefined
      : element(
          'fieldset',
          { class: 'others' },
          element('legend', {}, 'There is more than one grade of it. Which is meant?'),
          ...choices.map(({ root }) => root),
        )

  const standing = element('span', { class: 'standing', role: 'status' })
  const root = element(
    'article',
    { class: 'cue', 'aria-labelledby': ids.title },
    element('header', {}, element('h3', { id: ids.title }, name), standing),
    picture,
    wiping,
    drawing.tools,
    others,
    element('div', { class: 'decide' }, agreed, asked),
    noteField,
    details(cue),
  )

  return {
    root,
    update: () => {
      const { says, alternate, note: words } = said()
      agreed.setAttribute('aria-pressed', String(says === 'agreed'))
      asked.setAttribute('aria-pressed', String(says === 'asked'))
      standing.textContent = says ? SIGNS[says] : '○ open'
      if (note.value !== words) note.value = words
      const chosen = cue.alternates.find((each) => each.name === alternate)
      const wanted = chosen?.picture ?? cue.after
      if (after.getAttribute('src') !== wanted) after.setAttribute('src', wanted)
      for (const choice of choices) choice.update(chosen?.name)
      drawing.update()
    },
    play: async (signal) => {
      root.scrollIntoView({ block: 'center' })
      setWipe(0)
      root.classList.add('is-playing')
      if (cue.clip === null) await waited(Math.min(cue.seconds, LONGEST_STILL_S), signal)
      else await playClip(picture, cue.clip, cue.seconds, signal)
      root.classList.remove('is-playing')
    },
  }
}

const alternateChoice = (
  cue: PackCue,
  alternate: PackAlternate | undefined,
  choose: () => void,
) => {
  const radio = element('input', { type: 'radio', name: `grade-${cue.cue}`, change: choose })
  const words = alternate ? alternate.name || 'another, without a name' : 'as it is shown above'
  const picture = element('img', { alt: '', src: alternate?.picture ?? cue.after })
  return {
    root: element('label', {}, radio, picture, element('span', {}, words)),
    update: (chosen: string | undefined): void => {
      radio.checked = chosen === alternate?.name
    },
  }
}

/** The clip over the picture, once; where it cannot be played the picture stands for it. */
const playClip = async (
  picture: HTMLElement,
  clip: string,
  seconds: number,
  signal: AbortSignal,
): Promise<void> => {
  const video = element('video', { src: clip, muted: true, playsinline: true, class: 'clip' })
  video.muted = true
  picture.append(video)
  const ended = new Promise<void>((resolve) => {
    video.addEventListener('ended', () => resolve())
    video.addEventListener('error', () => resolve())
    signal.addEventListener('abort', () => resolve())
  })
  try {
    await video.play()
    await ended
  } catch {
    await waited(Math.min(seconds, LONGEST_STILL_S), signal)
  } finally {
    video.remove()
  }
}
