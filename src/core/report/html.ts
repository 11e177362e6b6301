/** Markup that is safe to put in a page: only `html` makes it. */
export type Html = { readonly html: string }

/** What stands in markup: text, which is escaped; numbers; markup; nothing; or several of these. */
export type HtmlPart = string | number | Html | undefined | readonly HtmlPart[]

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/**
 * Text as it stands in content and in quoted attributes: what means something in HTML as
 * references, and what HTML takes in no form (controls, noncharacters, halves of characters) as
 * U+FFFD.
 */
export const escapeHtml = (text: string): string =>
  text
    .replace(/\r\n?/gu, '\n')
    .replace(/\p{Cc}|\p{Surrogate}|\p{Noncharacter_Code_Point}/gu, (each) =>
      each === '\n' || each === '\t' ? each : '\ufffd',
    )
    .replace(/[&<>"']/gu, (each) => ENTITIES[each] ?? each)

const partText = (part: HtmlPart): string => {
  if (part === undefined) return ''
  if (typeof part === 'string') return escapeHtml(part)
  if (typeof part === 'number') return String(part)
  return 'html' in part ? part.html : part.map(partText).join('')
}

/** Markup from a template; text among its values is escaped. */
export const html = (strings: TemplateStringsArray, ...parts: readonly HtmlPart[]): Html => ({
  html: strings.map((each, index) => each + partText(parts[index])).join(''),
})

/**
 * Words that a person wrote, kept apart from those around them: neither their direction nor their
 * line breaks change what stands beside.
 */
export const written = (text: string): Html => html`<bdi class="written">${text}</bdi>`
