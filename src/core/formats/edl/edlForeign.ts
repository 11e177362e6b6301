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

const textJson = (text: string): string => (ESCAPED.test(text) ? JSON.stringify(text) : `"${text}"`)

const textsJson = (texts: readonly string[]): string => {
  let json = ''
  for (const text of texts) json += json === '' ? textJson(text) : `,${textJson(text)}`
  return `[${json}]`
}

/**
 * What is kept of an event as JSON text; '' where there is nothing. Just what `JSON.stringify`
 * gives, in less time: lists have many events.
 */
export const edlForeignText = ({ name, events, comments, notTaken }: EdlForeign): string => {
  let json = ''
  const add = (field: string, value: string): void => {
    json += `${json === '' ? '{' : ','}"${field}":${value}`
  }
  if (name !== undefined) add('name', textJson(name))
  if (events) add('events', textsJson(events))
  if (comments) add('comments', textsJson(comments))
  if (notTaken) add('notTaken', textsJson(notTaken))
  return json === '' ? '' : `${json}}`
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
