import { type Problem, problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'

/** The text of a file, and what is to be told of how it was read. */
export type TextOfBytes = { readonly text: string; readonly told: readonly Problem[] }

/** The encoding that the first bytes state (Unicode 15, 2.6: byte order marks). */
const statedEncoding = (bytes: Uint8Array): string | undefined => {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le'
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be'
  return undefined
}

/**
 * What Windows-1252 has in place of the controls 0x80–0x9f (WHATWG Encoding Standard, index
 * windows-1252). By hand, as Node 20 takes these for the controls of Latin-1.
 */
const FROM_80 = '€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ'

const fromWindows1252 = (bytes: Uint8Array): string =>
  new TextDecoder('latin1').decode(bytes).replace(/[\x80-\x9f]/gu, (control) => {
    return FROM_80[control.charCodeAt(0) - 0x80] ?? control
  })

/**
 * Bytes as text: UTF-16 where they say so, else UTF-8, else Windows-1252, which older programs
 * write; the last is told, as letters with accents may then be others. Byte order marks go.
 */
export const textOfBytes = (bytes: Uint8Array): TextOfBytes => {
  const stated = statedEncoding(bytes)
  if (stated !== undefined) return { text: new TextDecoder(stated).decode(bytes), told: [] }
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), told: [] }
  } catch {
    return {
      text: fromWindows1252(bytes),
      told: [
        problem(
          'not-stated',
          'The file is not UTF-8; it was read as Windows-1252, so look at letters with accents.',
        ),
      ],
    }
  }
}

/** Bytes of a file that must be UTF-8, as text; refused with the line where they are not. */
export const utf8Text = (bytes: Uint8Array, name: string): Result<string> => {
  const decoder = new TextDecoder('utf-8', { fatal: true })
  try {
    return ok(decoder.decode(bytes))
  } catch {
    const shown = new TextDecoder('utf-8').decode(bytes)
    const line = shown.slice(0, shown.indexOf('\ufffd') + 1).split('\n').length
    return fail(
      problem('malformed', `${name} is not UTF-8, as a job must be; save it as UTF-8.`, { line }),
    )
  }
}
