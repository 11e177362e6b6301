/**
 * What an event of a list made elsewhere said that a cue has no field for, as `foreign` keeps it
 * in JSON (format `edl`). All of it is optional.
 */
export type EdlForeign = {
  /** The clip's name: that of the incoming one where two are named. */
  readonly name?: string
  /** The event lines as they stood, without blanks around them; the event's own last. */
  readonly events?: readonly string[]
  /** Its other comments in order, without asterisks: written back as comments. */
  readonly comments?: readonly string[]
  /** Comments of a grade, ramp or note that could not be taken: not written back. */
  readonly notTaken?: readonly string[]
}

/** What a list as a whole said that a reel has no field for, in the same way. */
export type EdlListForeign = {
  readonly title?: string
  /** Comments before the first event. */
  readonly comments?: readonly string[]
  readonly notTaken?: readonly string[]
}

/** What JSON writes otherwise than as it stands, or may: all but plain letters. */
const ESCAPED = /[^ !#-[\]-\ud7ff\ue000-\uffff]/

const addText = (parts: string[], text: string): void => {
  if (ESCAPED.test(text)) parts.push(JSON.stringify(text))
  else parts.push('"', text, '"')
}

const addTexts = (parts: string[], name: string, texts: readonly string[]): void => {
  parts.push(parts.length === 0 ? '{"' : ',"', name, '":[')
  for (const [i, text] of texts.entries()) {
    if (i > 0) parts.push(',')
    addText(parts, text)
  }
  parts.push(']')
}

/**
 * What is kept of an event as JSON text; '' where there is nothing. Just what `JSON.stringify`
 * gives, in less time: lists have many events.
 */
export const edlForeignText = ({ name, events, comments, notTaken }: EdlForeign): string => {
  const parts: string[] = []
  if (name !== undefined) {
    parts.push('{"name":')
    addText(parts, name)
  }
  if (events) addTexts(parts, 'events', events)
  if (comments) addTexts(parts, 'comments', comments)
  if (notTaken) addTexts(parts, 'notTaken', notTaken)
  if (parts.length > 0) parts.push('}')
  return parts.join('')
}

const isTexts = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((each) => typeof each === 'string')

const isText = (value: unknown): value is string => typeof value === 'string'

/** What was kept, as far as it is of the shapes above; other fields are passed over. */
export const readEdlForeign = (text: string): EdlForeign & EdlListForeign => {
  let kept: unknown
  try {
    kept = JSON.parse(text)
  } catch {
    return {}
  }
  if (typeof kept !== 'object' || kept === null) return {}
  const { name, title, events, comments, notTaken }: Record<string, unknown> = { ...kept }
  return {
    ...(isText(name) ? { name } : {}),
    ...(isText(title) ? { title } : {}),
    ...(isTexts(events) ? { events } : {}),
    ...(isTexts(comments) ? { comments } : {}),
    ...(isTexts(notTaken) ? { notTaken } : {}),
  }
}
