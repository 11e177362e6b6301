import type { Mark } from '../core/agreement/answer.ts'
import type { PackContents } from '../core/agreement/pack/packContents.ts'
import type { CueId } from '../core/job/recordIds.ts'

/** What a reviewer has said of a cue so far. */
export type CueDraft = {
  readonly says: 'agreed' | 'asked' | undefined
  readonly note: string
  readonly marks: readonly Mark[]
  readonly alternate: string | undefined
  /** When it was last changed. */
  readonly at: string
}

export type Draft = {
  readonly name: string
  readonly cues: ReadonlyMap<CueId, CueDraft>
  /** Whether all of it was saved as an answer. */
  readonly isSaved: boolean
}

const NOTHING_SAID = { says: undefined, note: '', marks: [], alternate: undefined } as const

export const draftOf = ({ cues }: Draft, cue: CueId): CueDraft =>
  cues.get(cue) ?? { ...NOTHING_SAID, at: '' }

/** A draft that is kept where the browser lets it, and tells whoever listens that it changed. */
export type DraftBook = {
  readonly get: () => Draft
  readonly setName: (name: string) => void
  readonly say: (cues: readonly CueId[], change: Partial<Omit<CueDraft, 'at'>>) => void
  readonly saved: () => void
  readonly listen: (listener: () => void) => void
  /** Whether the browser keeps it: if not, closing the page loses it. */
  readonly isKept: () => boolean
}

const EMPTY: Draft = { name: '', cues: new Map(), isSaved: true }

const placeOf = ({ id }: PackContents): string => `reelwright-review ${id}`

/** What this browser kept of a pack; nothing where it keeps nothing or what it kept is none. */
const recalled = (contents: PackContents): Draft => {
  try {
    const kept = JSON.parse(localStorage.getItem(placeOf(contents)) ?? 'null')
    const known = new Set(contents.cues.map(({ cue }) => cue))
    const cues = new Map<CueId, CueDraft>(kept.cues)
    return {
      name: String(kept.name),
      cues: new Map([...cues].filter(([cue]) => known.has(cue))),
      isSaved: Boolean(kept.isSaved),
    }
  } catch {
    return EMPTY
  }
}

export const openDraft = (contents: PackContents): DraftBook => {
  let draft = recalled(contents)
  let isKept = true
  const listeners: (() => void)[] = []
  const put = (next: Draft): void => {
    draft = next
    try {
      localStorage.setItem(
        placeOf(contents),
        JSON.stringify({ ...next, cues: [...next.cues.entries()] }),
      )
    } catch {
      isKept = false
    }
    for (const listener of listeners) listener()
  }
  return {
    get: () => draft,
    setName: (name) => put({ ...draft, name, isSaved: false }),
    say: (cues, change) => {
      const said = new Map(draft.cues)
      const at = new Date().toISOString()
      for (const cue of cues) said.set(cue, { ...draftOf(draft, cue), ...change, at })
      put({ ...draft, cues: said, isSaved: false })
    },
    saved: () => put({ ...draft, isSaved: true }),
    listen: (listener) => void listeners.push(listener),
    isKept: () => isKept,
  }
}
