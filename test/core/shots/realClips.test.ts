import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { findInFile } from '../../support/findInFile.ts'
import { scoreBoundaries } from '../../support/scoreBoundaries.ts'

const MEDIA = resolve(import.meta.dirname, '../../media')

type Clip = {
  readonly file: string
  readonly stream: string | number
  readonly hard_cuts: readonly { readonly frame: number }[]
  readonly steps_inside_fades: readonly { readonly frame: number }[]
  readonly text_only_changes: readonly number[]
  readonly gradual: readonly {
    readonly type: string
    readonly first_affected: number
    readonly first_clean: number
  }[]
}

const { clips } = JSON.parse(readFileSync(`${MEDIA}/cuts.json`, 'utf8')) as { clips: Clip[] }
const firstStreams = clips.filter(({ stream }) => stream === 'first video stream' || stream === 0)

/** Each clip is read once for all that is asked of it. */
const known = new Map<string, ReturnType<typeof findInFile>>()
const findOnce = (file: string): ReturnType<typeof findInFile> => {
  const found = known.get(file) ?? findInFile(`${MEDIA}/${file}`)
  known.set(file, found)
  return found
}

describe('shot changes of real clips (test/media/cuts.json)', () => {
  it.each(firstStreams)('$file: hard cuts are exact to the frame, and no others', async (clip) => {
    const found = await findOnce(clip.file)
    const excused = new Set([
      ...clip.steps_inside_fades.map(({ frame }) => frame),
      ...clip.text_only_changes,
    ])
    const cuts = found
      .filter(({ kind }) => kind === 'cut')
      .map(({ first }): number => first)
      .filter((first) => !excused.has(first))
    const truth = clip.hard_cuts.map(({ frame }) => frame)
    const score = scoreBoundaries(truth, cuts, 0)
    expect(score.missed).toBe(0)
    expect(score.falseOnes).toBe(0)
  })

  it.each(firstStreams.filter(({ gradual }) => gradual.length > 0))(
    '$file: every gradual change overlaps one that was found, edges within 4 frames',
    async (clip) => {
      const found = (await findOnce(clip.file)).filter(({ kind }) => kind !== 'cut')
      for (const { first_affected, first_clean } of clip.gradual) {
        const match = found.find(
          ({ first, last }) => first <= first_clean - 1 && last >= first_affected,
        )
        expect(match, `a change at ${first_affected}`).toBeDefined()
        expect(Math.abs((match?.first ?? 0) - first_affected)).toBeLessThanOrEqual(4)
        expect(Math.abs((match?.last ?? 0) - (first_clean - 1))).toBeLessThanOrEqual(4)
      }
    },
  )
})
