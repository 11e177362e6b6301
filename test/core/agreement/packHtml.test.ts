import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { packHtml } from '../../../src/core/agreement/pack/packHtml.ts'
import { base64 } from '../../../src/core/base/base64.ts'
import { samplePack } from '../../support/samplePack.ts'

const PAGE = { script: 'document.title', style: 'body { margin: 0 }' }

const HOSTILE = `</script><script>alert(1)</script><img src=x onerror='y'>&"\u2028\u202e`

describe('a review pack', () => {
  it('may run its own script and style and nothing else, and reaches nothing', () => {
    const html = packHtml(samplePack(), PAGE)
    const sum = (text: string) => createHash('sha256').update(text).digest('base64')
    expect(html).toContain(
      `content="default-src 'none'; script-src 'sha256-${sum(PAGE.script)}'; style-src 'sha256-${sum(PAGE.style)}'; img-src data:; media-src data:; base-uri 'none'; form-action 'none'"`,
    )
  })

  it('holds its contents as they are, whatever their words', () => {
    const pack = samplePack({ title: HOSTILE, madeFor: HOSTILE }, (cue) => ({
      ...cue,
      scene: HOSTILE,
    }))
    const html = packHtml(pack, PAGE)
    const held = /<script type="application\/json" id="contents">([^<]*)<\/script>/u.exec(html)?.[1]
    expect(JSON.parse(held ?? '')).toEqual(pack)
    expect(html.match(/<script/gu)).toHaveLength(2)
    expect(html.match(/<\/script>/gu)).toHaveLength(2)
    expect(html).not.toMatch(/<img/u)
    expect(html).toContain('<title>&#60;/script&#62;')
  })

  it('is not made with a script that would end before its end', () => {
    expect(() => packHtml(samplePack(), { ...PAGE, script: '"</script>"' })).toThrow('Bug')
  })
})

// RFC 4648 §10: the test vectors of Base64.
it.each([
  ['', ''],
  ['f', 'Zg=='],
  ['fo', 'Zm8='],
  ['foo', 'Zm9v'],
  ['foob', 'Zm9vYg=='],
  ['fooba', 'Zm9vYmE='],
  ['foobar', 'Zm9vYmFy'],
])('Base64 of “%s” is “%s”', (text, expected) => {
  expect(base64(new TextEncoder().encode(text))).toBe(expected)
})
