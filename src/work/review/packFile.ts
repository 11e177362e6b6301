import type { PackContents } from '../../core/agreement/pack/packContents.ts'
import { packHtml, type ReviewPage } from '../../core/agreement/pack/packHtml.ts'
import { type ZipEntry, zipOf } from '../../media/zip.ts'
import type { PackStill } from './packStills.ts'

const KINDS: Readonly<Record<string, string>> = { 'image/jpeg': 'jpg', 'image/png': 'png' }

/** What a data: address holds. */
const contentsOf = (address: string): { readonly type: string; readonly bytes: Uint8Array } => {
  const [, type = '', base64 = ''] = /^data:([^;]+);base64,(.*)$/u.exec(address) ?? []
  return { type, bytes: Uint8Array.from(atob(base64), (each) => each.charCodeAt(0)) }
}

const entryOf = ({ number, kind, address }: PackStill): ZipEntry => {
  const { type, bytes } = contentsOf(address)
  return {
    name: `stills/cue-${String(number).padStart(4, '0')}-${kind}.${KINDS[type] ?? 'bin'}`,
    bytes,
  }
}

/** A review pack as the bytes of one page of HTML. */
export const packPage = (contents: PackContents, page: ReviewPage): Uint8Array<ArrayBuffer> =>
  new TextEncoder().encode(packHtml(contents, page))

/** The same in a .zip with full-size stills beside it. `stem` is the name of the page. */
export const packZip = (
  contents: PackContents,
  page: ReviewPage,
  stem: string,
  stills: readonly PackStill[],
): Uint8Array<ArrayBuffer> =>
  zipOf([{ name: `${stem}.html`, bytes: packPage(contents, page) }, ...stills.map(entryOf)])
