import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import type { PartManifest } from './partManifest.ts'

/** Parts that are there, `place` being wherever the caller found each. */
export type FoundPart = { readonly place: string; readonly manifest: PartManifest }

const numbersText = (numbers: readonly number[]): string =>
  numbers.length > 8 ? `${numbers.slice(0, 8).join(', ')} and more` : numbers.join(', ')

/**
 * The parts of one pass in order, each once: of a part delivered twice the first is taken. Refuses
 * parts of different passes, and says which are missing.
 */
export const joinOrder = (
  found: readonly FoundPart[],
): Result<readonly [FoundPart, ...FoundPart[]]> => {
  const [first] = found
  if (!first) return fail(problem('missing', 'There is no part to join; name some.'))
  const { identity, of, frames, stem, settings, encoder } = first.manifest
  const byPart = new Map<number, FoundPart>()
  for (const each of found) {
    const { manifest, place } = each
    const isSame =
      manifest.identity === identity &&
      manifest.of === of &&
      manifest.frames === frames &&
      manifest.stem === stem &&
      manifest.settings === settings &&
      manifest.encoder === encoder
    if (!isSame)
      return fail(
        problem(
          'conflict',
          `${place} is not of the same pass as ${first.place}: job, scan, format, encoder or number of parts differ; make it again.`,
          { file: place },
        ),
      )
    if (!byPart.has(manifest.part)) byPart.set(manifest.part, each)
  }
  const missing = Array.from({ length: of }, (_, i) => i + 1).filter((part) => !byPart.has(part))
  if (missing.length > 0)
    return fail(
      problem(
        'missing',
        `${missing.length === 1 ? 'Part' : 'Parts'} ${numbersText(missing)} of ${of} ${missing.length === 1 ? 'is' : 'are'} missing or damaged; make ${missing.length === 1 ? 'it' : 'them'} again.`,
      ),
    )
  const parts = [...byPart.values()].sort((a, b) => a.manifest.part - b.manifest.part)
  const [begin = first, ...rest] = parts
  const broken = parts.find(
    ({ manifest }, i) => manifest.first !== (parts[i - 1]?.manifest.end ?? 0),
  )
  if (broken || parts.at(-1)?.manifest.end !== frames)
    return fail(
      problem('conflict', 'The parts do not follow one another; make them all again.', {
        file: (broken ?? first).place,
      }),
    )
  return ok([begin, ...rest])
}
