/** An element: its name, attributes in order, and either text or elements inside. */
export type XmlElement = {
  readonly name: string
  readonly attributes?: Readonly<Record<string, string>>
  readonly inside?: string | readonly XmlElement[]
}

/** Characters XML 1.0 §2.2 does not allow at all, escaped or not. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters meant
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udfff]/gu

/** Whether XML can carry a text as it is; what it cannot is written as U+FFFD. */
export const isXmlText = (text: string): boolean => text.search(FORBIDDEN) === -1

/** A carriage return is escaped as well: a reader turns a bare one into a line feed (§2.11). */
const escaped = (text: string): string =>
  text
    .replace(FORBIDDEN, '\ufffd')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll('\r', '&#13;')

/** White space in an attribute is escaped as well: a reader makes spaces of it (§3.3.3). */
const escapedAttribute = (text: string): string =>
  escaped(text).replaceAll('\n', '&#10;').replaceAll('\t', '&#9;')

const lines = ({ name, attributes = {}, inside }: XmlElement, indent: string): string[] => {
  const written = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${escapedAttribute(value)}"`,
  )
  const open = `${indent}<${name}${written.join('')}`
  if (inside === undefined) return [`${open}/>`]
  if (typeof inside === 'string') return [`${open}>${escaped(inside)}</${name}>`]
  return [
    `${open}>`,
    ...inside.flatMap((each) => lines(each, `${indent}  `)),
    `${indent}</${name}>`,
  ]
}

/** Elements as they stand inside the root of a document, each line ended. */
export const writeXmlInside = (elements: readonly XmlElement[]): string =>
  elements
    .flatMap((element) => lines(element, '  '))
    .map((line) => `${line}\n`)
    .join('')

/** An XML 1.0 document in UTF-8, indented by two spaces. */
export const writeXml = (root: XmlElement): string =>
  ['<?xml version="1.0" encoding="UTF-8"?>', ...lines(root, ''), ''].join('\n')

/** The same of a root whose elements `writeXmlInside` wrote: where files share most of them. */
export const writeXmlAround = (
  { name, attributes = {} }: XmlElement,
  inside: readonly string[],
): string => {
  const [open = ''] = lines({ name, attributes, inside: [] }, '')
  return `<?xml version="1.0" encoding="UTF-8"?>\n${open}\n${inside.join('')}</${name}>\n`
}
