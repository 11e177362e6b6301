type Child = Node | string | undefined

type Properties = Readonly<Record<string, string | boolean | ((event: Event) => void) | undefined>>

/**
 * An element with attributes, listeners (functions, by the event's name) and children. Texts become
 * text nodes: nothing that is shown can become markup.
 */
export const element = <Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Properties = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] => {
  const made = document.createElement(tag)
  for (const [name, value] of Object.entries(properties)) {
    if (typeof value === 'function') made.addEventListener(name, value)
    else if (typeof value === 'string') made.setAttribute(name, value)
    else if (value) made.setAttribute(name, '')
  }
  made.append(...children.filter((child) => child !== undefined))
  return made
}

/** A button with words; what presses it is `press`. */
export const button = (
  words: string,
  press: () => void,
  properties: Properties = {},
): HTMLButtonElement => element('button', { type: 'button', click: press, ...properties }, words)
