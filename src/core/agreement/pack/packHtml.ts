import { sha256 } from '@noble/hashes/sha2.js'
import { utf8ToBytes } from '@noble/hashes/utils.js'
import { base64 } from '../../base/base64.ts'
import type { PackContents } from './packContents.ts'

/** The script and the style of the page, as the build makes them of `src/review`. */
export type ReviewPage = { readonly script: string; readonly style: string }

const sourceOf = (text: string): string => `'sha256-${base64(sha256(utf8ToBytes(text)))}'`

/**
 * What the page may do (Content Security Policy Level 3): run this script, use this style, and show
 * what it holds. It can reach nothing else, on the network or on the disk.
 */
const policyOf = ({ script, style }: ReviewPage): string =>
  [
    "default-src 'none'",
    `script-src ${sourceOf(script)}`,
    `style-src ${sourceOf(style)}`,
    'img-src data:',
    'media-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')

/** JSON that no parser of HTML takes for anything else, whatever its texts hold. */
const jsonInHtml = (contents: PackContents): string =>
  JSON.stringify(contents)
    .replace(/</gu, '\\u003c')
    .replace(/[\u2028\u2029]/gu, (each) => (each === '\u2028' ? '\\u2028' : '\\u2029'))

const escaped = (text: string): string =>
  text.replace(/[&<>"]/gu, (each) => `&#${each.codePointAt(0)};`)

/** A review pack as one HTML file in UTF-8, which opens offline and holds all that it needs. */
export const packHtml = (contents: PackContents, page: ReviewPage): string => {
  if (/<\/script/iu.test(page.script) || /<\/style/iu.test(page.style))
    throw new Error('Bug: script or style would end before its end')
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyOf(page)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escaped(contents.title)}: for agreement</title>
<style>${page.style}</style>
</head>
<body>
<noscript><p>This page shows its pictures with a script of its own. Allow scripts for this file and open it again.</p></noscript>
<script type="application/json" id="contents">${jsonInHtml(contents)}</script>
<script>${page.script}</script>
</body>
</html>
`
}
