import * as v from 'valibot'
import type { ReadElement } from '../../base/xmlReader.ts'
import type { XmlElement } from '../../base/xmlWriter.ts'
import { foreignOf } from '../../job/foreignOf.ts'
import type { Foreign } from '../../job/job.ts'

const WORD_NAMES = ['Description', 'InputDescription', 'ViewingDescription'] as const

/** A description of any of the three kinds of ASC CDL, exactly as written. */
export type CdlWord = { readonly name: (typeof WORD_NAMES)[number]; readonly text: string }

/** What a file said of a correction besides its numbers, level by level. */
export type CorrectionWords = {
  /** '' where it had none. */
  readonly id: string
  readonly mediaRefs: readonly string[]
  readonly decision: readonly CdlWord[]
  readonly correction: readonly CdlWord[]
  readonly sop: readonly CdlWord[]
  readonly sat: readonly CdlWord[]
}

const isWordName = (name: string): name is CdlWord['name'] =>
  (WORD_NAMES as readonly string[]).includes(name)

export const isWord = ({ name }: ReadElement): boolean => isWordName(name)

/** The descriptions that stand directly in an element. */
export const wordsIn = (element: ReadElement | undefined): readonly CdlWord[] =>
  element?.children.flatMap(({ name, text }) => (isWordName(name) ? [{ name, text }] : [])) ?? []

/** Descriptions as they are written. */
export const wordElements = (words: readonly CdlWord[]): readonly XmlElement[] =>
  words.map(({ name, text }) => ({ name, inside: text }))

const words = v.optional(
  v.array(v.strictObject({ name: v.picklist(WORD_NAMES), text: v.string() })),
  [],
)

const correctionSchema = v.strictObject({
  id: v.optional(v.string(), ''),
  mediaRefs: v.optional(v.array(v.string()), []),
  decision: words,
  correction: words,
  sop: words,
  sat: words,
})

const listSchema = v.strictObject({ words })

const keptAs = <Schema extends v.GenericSchema<unknown>>(
  foreign: Foreign,
  schema: Schema,
): v.InferOutput<Schema> | undefined => {
  const text = foreignOf(foreign, 'cdl')
  if (text === undefined) return undefined
  try {
    const parsed = v.safeParse(schema, JSON.parse(text))
    return parsed.success ? parsed.output : undefined
  } catch {
    return undefined
  }
}

const NOTHING: CorrectionWords = {
  id: '',
  mediaRefs: [],
  decision: [],
  correction: [],
  sop: [],
  sat: [],
}

/** What ASC CDL files said of a cue; nothing where they did not. */
export const keptOfCue = (foreign: Foreign): CorrectionWords =>
  keptAs(foreign, correctionSchema) ?? NOTHING

/** What ASC CDL files said as a whole of a reel. */
export const keptOfReel = (foreign: Foreign): readonly CdlWord[] =>
  keptAs(foreign, listSchema)?.words ?? []

const isSaid = (value: string | readonly unknown[]): boolean => value.length > 0

/** The words of a correction as a job keeps them; '' where there are none. */
export const keptText = (kept: CorrectionWords): string => {
  const said = Object.entries(kept).filter(([, value]) => isSaid(value))
  return said.length === 0 ? '' : JSON.stringify(Object.fromEntries(said))
}

/** The words of a list as a job keeps them; '' where there are none. */
export const keptListText = (said: readonly CdlWord[]): string =>
  said.length === 0 ? '' : JSON.stringify({ words: said })
