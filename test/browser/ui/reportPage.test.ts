import axe from 'axe-core'
import { afterEach, expect, it } from 'vitest'
import { hostileJob, reportFacts, reportPage } from '../../support/sampleReport.ts'

const PAGES = [
  ['a whole one', reportPage()],
  ['one of hostile words', reportPage(reportFacts(hostileJob()))],
  [
    'one without pictures',
    reportPage(reportFacts(undefined, { cues: new Map(), held: new Map() })),
  ],
] as const

const parsed = (page: string): Document => new DOMParser().parseFromString(page, 'text/html')

/** Puts a page's style and content into the document that the test runs in. */
const show = (page: string): void => {
  const { head, body } = parsed(page)
  const style = head.querySelector('style')
  if (style) document.head.append(document.importNode(style, true))
  document.body.replaceChildren(
    ...[...body.children].map((each) => document.importNode(each, true)),
  )
}

afterEach(() => {
  document.body.replaceChildren()
  document.head.querySelectorAll('style:not([data-vite-dev-id])').forEach((each) => {
    if (each.textContent?.includes('content-visibility')) each.remove()
  })
})

it.each(PAGES)('a report is read by a browser just as it is written: %s', (_, page) => {
  const read = parsed(page)
  const names = new Set([...page.matchAll(/<([a-z][a-z0-9]*)/gu)].map(([, name]) => name ?? ''))
  for (const name of names) {
    const written = page.match(new RegExp(`<${name}[\\s>]`, 'gu'))?.length
    expect(read.querySelectorAll(name).length, name).toBe(written)
  }
  expect(read.compatMode).toBe('CSS1Compat')
  expect(read.querySelectorAll('script, iframe, object, embed, link, form')).toHaveLength(0)
  const handlers = [...read.querySelectorAll('*')].flatMap((each) =>
    each.getAttributeNames().filter((name) => name.startsWith('on')),
  )
  expect(handlers).toEqual([])
})

it.each(PAGES)(
  'it has a language, a title, headings in order, and links that lead somewhere: %s',
  (_, page) => {
    const read = parsed(page)
    expect(read.documentElement.lang).toBe('en')
    expect(read.title).toContain(': report')
    const levels = [...read.querySelectorAll('h1, h2, h3, h4')].map((each) =>
      Number(each.tagName[1]),
    )
    expect(levels[0]).toBe(1)
    for (const [index, level] of levels.entries())
      expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1)
    const ids = [...read.querySelectorAll('[id]')].map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const link of read.querySelectorAll('a[href^="#"]'))
      expect(ids).toContain(link.getAttribute('href')?.slice(1))
    for (const each of read.querySelectorAll('[aria-labelledby]'))
      expect(ids).toContain(each.getAttribute('aria-labelledby'))
  },
)

it.each(PAGES)('axe has nothing to object to: %s', async (_, page) => {
  show(page)
  const { violations } = await axe.run(document, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
  })
  expect(
    violations
      .filter(({ id }) => !['document-title', 'html-has-lang'].includes(id))
      .map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`),
  ).toEqual([])
})

it('its pictures load', async () => {
  show(reportPage())
  const pictures = [...document.querySelectorAll('img')]
  expect(pictures).toHaveLength(7)
  await Promise.all(pictures.map((each) => each.decode()))
})
