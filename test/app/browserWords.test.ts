import { expect, test } from 'vitest'
import { browserWords } from '../../src/app/browserWords.ts'

const WEBKIT = 'AppleWebKit/537.36 (KHTML, like Gecko)'

// Identifying lines in the form the browsers send, from memory.
test.each([
  [`Mozilla/5.0 (X11; Linux x86_64) ${WEBKIT} Chrome/141.0.0.0 Safari/537.36`, 'Chromium 141'],
  [`Mozilla/5.0 (X11) ${WEBKIT} HeadlessChrome/141.0.0.0 Safari/537.36`, 'Chromium 141'],
  [`Mozilla/5.0 (Windows) ${WEBKIT} Chrome/141.0 Safari/537.36 Edg/140.0`, 'Edge 140'],
  ['Mozilla/5.0 (X11; Linux x86_64; rv:144.0) Gecko/20100101 Firefox/144.0', 'Firefox 144'],
  ['Mozilla/5.0 (Macintosh) AppleWebKit/605.1.15 Version/26.0 Safari/605.1.15', 'Safari 26'],
  ['something else', 'a browser'],
])('%s', (line, words) => {
  expect(browserWords(line)).toBe(words)
})
