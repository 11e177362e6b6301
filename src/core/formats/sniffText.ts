import { ledgerForm } from './csv/ledgerForm.ts'

/** What a text is, by what is in it: a job, a list of decisions or a process list. */
export type TextKind = 'job' | 'cdl' | 'clf' | 'edl' | 'otio' | 'csv'

const CDL_ROOTS = ['ColorCorrection', 'ColorCorrectionCollection', 'ColorDecisionList']

/** What may stand before the first element of an XML document (XML 1.0, prolog). */
const PROLOG = /^(?:\s+|<\?[\s\S]*?\?>|<!--[\s\S]*?-->|<!DOCTYPE[^[>]*(?:\[[^\]]*\]\s*)?>)/u

/** The first element's name, without its prefix; undefined where there is none. */
const rootName = (text: string): string | undefined => {
  let rest = text
  for (let prolog = PROLOG.exec(rest); prolog; prolog = PROLOG.exec(rest))
    rest = rest.slice(prolog[0].length)
  return /^<(?:[\w.-]+:)?([\w.-]+)/u.exec(rest)?.[1]
}

const ofXml = (text: string): TextKind | undefined => {
  const root = rootName(text)
  if (root === undefined) return undefined
  if (CDL_ROOTS.includes(root)) return 'cdl'
  return root === 'ProcessList' ? 'clf' : undefined
}

const ofJson = (text: string): TextKind | undefined => {
  try {
    const parsed: unknown = JSON.parse(text)
    if (typeof parsed !== 'object' || parsed === null) return undefined
    if ('OTIO_SCHEMA' in parsed) return 'otio'
    return 'format' in parsed && parsed.format === 'reelwright-job' ? 'job' : undefined
  } catch {
    // Broken, but its reader can say where: what it set out to be is told by its first such word.
    const word = /"(OTIO_SCHEMA|reelwright-job)"/u.exec(text)?.[1]
    if (word === undefined) return undefined
    return word === 'OTIO_SCHEMA' ? 'otio' : 'job'
  }
}

/** An event of a conventional list: its number, reel, track and what it does, and timecodes. */
const EVENT = /^\s*\d+\s+\S+\s+\S+\s+\S+.*\d{2}[:;.,]\d{2}[:;.,]\d{2}[:;.,]\d{2}/u

/** Lines, and characters of each, in which the first words of a conventional list are looked for. */
const LINES_LOOKED_AT = 200
const LINE_LOOKED_AT = 300

const isEdl = (text: string): boolean =>
  text
    .split(/\r\n|\r|\n/u, LINES_LOOKED_AT)
    .map((line) => line.slice(0, LINE_LOOKED_AT))
    .some((line) => /^\s*(?:TITLE|FCM)\s*:/iu.test(line) || EVENT.test(line))

/** Headings that tell a ledger from some other table. */
const HEADINGS = 3

/** Whether the heading line names columns of a ledger, whatever stands between them. */
const isLedger = (text: string): boolean => ledgerForm(text).named >= HEADINGS

/** What a text is, by what is in it and never by its name; undefined where it is nothing read here. */
export const sniffText = (text: string): TextKind | undefined => {
  const body = text.replace(/^\u{feff}/u, '').trimStart()
  if (body.startsWith('<')) return ofXml(body)
  if (body.startsWith('{')) return ofJson(body)
  if (isLedger(body)) return 'csv'
  return isEdl(body) ? 'edl' : undefined
}
